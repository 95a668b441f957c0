using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Readings;

/// <summary>All that a unit's own sheet is made from (<see cref="OwnSheet.OnBench"/>): units with equal keys have the same circuit.</summary>
/// <param name="Type">The sheet of its type: the very object, a newer version is another.</param>
/// <param name="Changes">What was changed on it.</param>
/// <param name="Least">The shop's least insulation; null for none [Ω].</param>
/// <param name="Usual">The shop's figure of a dry unit; null for none [Ω].</param>
public sealed record CircuitKey(TypeSheet Type, ImmutableArray<PartChanged> Changes, double? Least, double? Usual)
{
    /// <summary>The key of a unit.</summary>
    public static CircuitKey Of(BenchUnit unit, TypeSheet type, Shop shop)
    {
        var (least, usual) = ShopLimits.InsulationOf(shop);
        return new(type, [.. unit.All<PartChanged>().Select(p => p.Fact)], least, usual);
    }

    /// <inheritdoc/>
    public bool Equals(CircuitKey? other) =>
        other is not null
        && ReferenceEquals(Type, other.Type)
        && (Least, Usual) == (other.Least, other.Usual)
        && Changes.SequenceEqual(other.Changes);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Type.Id, Changes.Length, Least, Usual);
}
