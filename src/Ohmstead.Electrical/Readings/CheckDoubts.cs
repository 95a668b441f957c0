using System.Collections.Immutable;

namespace Ohmstead.Electrical.Readings;

/// <summary>What the last diagnosis doubts of the checks: such a check opens nothing until it is read again.</summary>
/// <param name="Readings">Readings whose last value was probably noted or taken wrongly.</param>
/// <param name="LeadOhms">Test leads that were probably not taken off [Ω]; 0 where nothing is doubted.</param>
public sealed record CheckDoubts(ImmutableHashSet<string> Readings, double LeadOhms)
{
    /// <summary>Nothing is doubted.</summary>
    public static CheckDoubts None { get; } = new(ImmutableHashSet.Create<string>(StringComparer.Ordinal), 0);
}
