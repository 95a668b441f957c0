namespace Ohmstead.App.Commands;

/// <summary>What the process returns.</summary>
internal static class ExitCode
{
    public const int Done = 0;
    public const int Broken = 1;
    public const int Refused = 2;
}
