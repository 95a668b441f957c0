namespace Ohmstead.App.Commands;

/// <summary>Bold type where a person reads, plain text everywhere else.</summary>
internal static class Style
{
    private static readonly bool IsPlain =
        Console.IsOutputRedirected
        || Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 }
        || Environment.GetEnvironmentVariable("TERM") == "dumb"
        || (OperatingSystem.IsWindows() && Environment.GetEnvironmentVariable("WT_SESSION") is null);

    public static string Heading(string text) => IsPlain ? text : $"{CleanWriter.BoldOn}{text}{CleanWriter.BoldOff}";
}
