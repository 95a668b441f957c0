namespace Ohmstead.Storage.Killed;

/// <summary>Lines on standard output, each with an end mark: one that was cut by the kill does not count.</summary>
internal static class Acknowledged
{
    public const string End = " ok";

    private static readonly Lock Turn = new();

    public static void Say(string line)
    {
        lock (Turn)
            Console.Out.Write(line + End + "\n");
    }
}
