using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Findings;

/// <summary>All that a unit's sheet with its judgements is made from (<see cref="JudgedSheet"/>): with equal keys every fault does the same to every reading.</summary>
/// <param name="Judged">What was judged by hand, in the order of the words.</param>
/// <param name="Chances">The shop's own chances of faults.</param>
public sealed record JudgedKey(
    CircuitKey Circuit,
    ImmutableArray<(string Element, string Mode, Judgement Judgement)> Judged,
    ImmutableArray<ShopChance> Chances
)
{
    /// <summary>The key of a unit.</summary>
    public static JudgedKey Of(BenchUnit unit, TypeSheet type, Shop shop) =>
        new(
            CircuitKey.Of(unit, type, shop),
            [
                .. JudgedSheet
                    .Judgements(unit)
                    .Select(j => (j.Key.Element, j.Key.Mode, j.Value.Judgement))
                    .OrderBy(j => j.Element, StringComparer.Ordinal)
                    .ThenBy(j => j.Mode, StringComparer.Ordinal),
            ],
            shop.Chances
        );

    /// <inheritdoc/>
    public bool Equals(JudgedKey? other) =>
        other is not null && Circuit.Equals(other.Circuit) && Judged.SequenceEqual(other.Judged) && Chances.SequenceEqual(other.Chances);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Circuit, Judged.Length);
}
