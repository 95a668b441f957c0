using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>Whether readings tell mistakes apart, each at its middle size.</summary>
internal static class MistakesShown
{
    /// <summary>True when no reading taken differs by more than the meter's limit.</summary>
    public static bool TheSame(MistakeTable table, ImmutableArray<RewireReading> taken, Mistake a, ImmutableArray<Mistake> b)
    {
        var (x, y) = (table.Shown([Middle(a)]), table.Shown(b.Select(Middle)));
        return Enumerable
            .Range(0, table.Set.Count)
            .Where(r => taken.Any(t => t.Spec.Id == table.SpecOf(r).Id))
            .All(r => Math.Abs(x[r] - y[r]) <= 1);
    }

    private static (Mistake, double) Middle(Mistake m) => (m, m.Sizes[m.Sizes.Length / 2]);
}
