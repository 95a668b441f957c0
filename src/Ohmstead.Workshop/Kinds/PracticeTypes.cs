namespace Ohmstead.Workshop.Kinds;

/// <summary>The types that come along: invented, to practice on. No real unit is one of them.</summary>
public static class PracticeTypes
{
    /// <summary>What stands beside the type and beside everything that is concluded of a unit of it.</summary>
    public const string Mark = "invented, for practice";

    /// <summary>Their ids, simplest first.</summary>
    public static IReadOnlyList<string> Ids { get; } = ["solo-110", "twin-175", "step-230"];

    /// <summary>True for a type that comes along.</summary>
    public static bool IsOne(string sheetId) => Ids.Contains(sheetId, StringComparer.Ordinal);
}
