namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>Sentences and reasons that are there only where they hold.</summary>
internal static class Reasons
{
    /// <summary>The reason where it holds, or nothing.</summary>
    public static IEnumerable<string> If(string reason, bool holds) => holds ? [reason] : [];
}
