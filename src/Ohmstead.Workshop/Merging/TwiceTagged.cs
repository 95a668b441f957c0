using System.Collections.Immutable;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Merging;

/// <summary>One tag on two units of the bench, each taken in where nobody knew of the other.</summary>
public static class TwiceTagged
{
    /// <summary>Units of one tag that are on the bench, two and two.</summary>
    public static ImmutableArray<(Guid One, Guid Other)> Candidates(IEnumerable<UnitCard> cards) =>
        [
            .. from tagged in cards
                .Where(c => !c.IsHandedBack && c.Tag.Length > 0)
                .GroupBy(c => c.Tag.Trim(), StringComparer.OrdinalIgnoreCase)
            let units = tagged.Select(c => c.Id).Order().ToList()
            from n in Enumerable.Range(0, units.Count)
            from other in units.Skip(n + 1)
            select (units[n], other),
        ];

    /// <summary>True where two benches gave the tag, and nobody said yet that both keep it.</summary>
    public static bool IsOpen(BenchUnit one, BenchUnit other)
    {
        var (first, second) = (one.Journal[0], other.Journal[0]);
        return (first.Bench != second.Bench || first.Bench.Length == 0)
            && !one.All<Settled>()
                .Concat(other.All<Settled>())
                .Any(s => s.Fact.Between.Contains(first.Id) && s.Fact.Between.Contains(second.Id));
    }

    /// <summary>Both keep it: an entry for either unit.</summary>
    public static Settled BothKeep(BenchUnit one, BenchUnit other) =>
        new([one.Journal[0].Id, other.Journal[0].Id], "Both units keep their tag");
}
