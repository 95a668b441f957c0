namespace Ohmstead.Architecture.Tests;

/// <summary>Fails with every finding in full, one a line.</summary>
internal static class Findings
{
    public static void None(IEnumerable<string> found)
    {
        string[] all = [.. found];
        Assert.True(all.Length == 0, string.Join(Environment.NewLine, all));
    }
}
