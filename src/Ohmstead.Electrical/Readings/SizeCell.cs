using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// A piece of the sizes that faults of unknown size may have, of equal chance with the others: around each share of a
/// logarithmic range, as wide as all cells leave it.
/// </summary>
/// <param name="Shares">By free fault: the middle of the cell [0..1 of the logarithmic range].</param>
/// <param name="Width">Width of the cell in every share.</param>
internal sealed record SizeCell(ImmutableArray<double> Shares, double Width)
{
    /// <summary>
    /// By number of faults of any size: into how many parts the range of each is cut. Few enough that all combinations can be
    /// worked out (12, 25, 27, 16); from five faults on the ranges stay whole.
    /// </summary>
    private static readonly int[] Cuts = [1, 12, 5, 3, 2];

    /// <summary>The cells for some faults whose size is free; one cell when there are none.</summary>
    public static ImmutableArray<SizeCell> For(int free)
    {
        var cuts = free < Cuts.Length ? Cuts[free] : 1;
        var cells = Enumerable.Repeat(cuts, free).Aggregate(1, (a, b) => a * b);
        return [.. Enumerable.Range(0, cells).Select(k => new SizeCell([.. Middles(k, cuts, free)], 1.0 / cuts))];
    }

    private static IEnumerable<double> Middles(int cell, int cuts, int free)
    {
        for (var f = 0; f < free; f++, cell /= cuts)
            yield return ((cell % cuts) + 0.5) / cuts;
    }

    /// <summary>The faults at shares of their ranges; those of a given size, or without any, as they are.</summary>
    public static Fault[] At(ImmutableArray<AssumedFault> faults, ReadOnlySpan<double> shares)
    {
        var sized = new Fault[faults.Length];
        var next = 0;
        for (var n = 0; n < sized.Length; n++)
        {
            var f = faults[n];
            sized[n] = new Fault(f.Mode, f.IsFree ? f.Mode.SizeAt(shares[next++]) : f.Size ?? f.Mode.MiddleSize);
        }
        return sized;
    }
}
