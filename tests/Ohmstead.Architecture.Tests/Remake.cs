namespace Ohmstead.Architecture.Tests;

/// <summary>Whether the files that tests compare with are to be written anew: <c>./test surface</c>.</summary>
internal static class Remake
{
    public static bool IsAsked { get; } = Environment.GetEnvironmentVariable("OHMSTEAD_SURFACE") == "1";
}
