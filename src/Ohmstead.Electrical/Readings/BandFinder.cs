using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// The central 95 % of a reading among units. The reading is taken as quadratic in each parameter on a logarithmic scale, a
/// thousandfold drawn, and sorted; then at each end of the band some of the drawn units that lie there are solved exactly,
/// and the end moves by what they differ on average. To first order that is the quantile of the exact reading, whatever the
/// parameters do together. Scratch of one thread.
/// </summary>
internal sealed class BandFinder(ReadingSet set, Predictor predictor)
{
    private const double Tail = 0.025;

    /// <summary>Parameters with less than this share of the variance are left out: 200 of them would hold 2 %.</summary>
    private const double LeastShare = 1e-4;

    /// <summary>Centres of cells within this many standard deviations of each other are one.</summary>
    private const double SameCentre = 0.02;

    private const int LeastExact = 8;
    private const int MostExact = 64;

    /// <summary>Standard error of an end that is good enough [width of the band].</summary>
    private const double GoodEnough = 0.015;

    private readonly int count = set.Model.Parameters.Length;
    private readonly double[] factors = new double[set.Model.Parameters.Length];
    private readonly double[] quick = new double[NormalDraws.Count];
    private readonly double[] sorted = new double[NormalDraws.Count];
    private readonly int[] ranked = new int[NormalDraws.Count];
    private ImmutableArray<AssumedFault> faults;
    private int reading;
    private double usual;
    private Piece[] pieces = [];
    private bool[] matters = [];

    /// <summary>A cell of sizes with the reading's quadratic law there: by size, over the width of the cell, and by parameter.</summary>
    private sealed record Piece(
        SizeCell Cell,
        Fault[] Faults,
        double Centre,
        double[] Trends,
        double[] Curves,
        double[] Slopes,
        double[] Bends
    )
    {
        public double VarianceOf(int p) => (Slopes[p] * Slopes[p]) + (2 * Bends[p] * Bends[p]);

        public double Variance => Enumerable.Range(0, Slopes.Length).Sum(VarianceOf);
    }

    /// <summary>A reading of the unit that is nominal but for some faults, in its quantity's unit; null where it cannot be solved.</summary>
    public double? ValueOf(int ofReading, Fault[] sized)
    {
        using var unit = predictor.Assume(sized);
        return unit.Value(ofReading);
    }

    /// <summary>The ends of the band on the scale of the set.</summary>
    /// <param name="ofReading">Place of the reading in the set.</param>
    /// <param name="withFaults">The faults; one of unknown size has any size, evenly over its logarithmic range.</param>
    /// <param name="nominal">What the nominal unit shows, in the quantity's unit; a size at which nothing is solved shows the same.</param>
    public (double Low, double High) Of(int ofReading, ImmutableArray<AssumedFault> withFaults, double nominal)
    {
        (reading, faults, usual) = (ofReading, withFaults, set.ToScale(ofReading, nominal));
        pieces = [.. SizeCell.For(faults.Count(f => f.IsFree)).Select(Centred)];
        FillSlopes();
        var (least, most) = (pieces.Min(p => p.Centre), pieces.Max(p => p.Centre));
        if (pieces.Sum(p => p.Variance) < 1e-20 && most - least < 1e-9)
            return (least, most);
        Draw();
        var (low, high) = (QuickQuantile(Tail), QuickQuantile(1 - Tail));
        var width = Shown(high) - Shown(low);
        var (lowMove, highMove) = (Correction(Tail, low, width), Correction(1 - Tail, high, width));
        return (Math.Min(low + lowMove, high + highMove), high + highMove);
    }

    private Piece Centred(SizeCell cell)
    {
        var sized = SizeCell.At(faults, cell.Shares.AsSpan());
        using var unit = predictor.Assume(sized);
        var centre = unit.Scaled(reading) ?? usual;
        var (trends, curves) = (new double[cell.Shares.Length], new double[cell.Shares.Length]);
        for (var f = 0; f < trends.Length; f++)
        {
            var (up, down) = (
                (At(cell.Shares, f, cell.Width / 2) ?? centre) - centre,
                (At(cell.Shares, f, -cell.Width / 2) ?? centre) - centre
            );
            (trends[f], curves[f]) = (up - down, 2 * (up + down));
        }
        return new Piece(cell, sized, centre, trends, curves, new double[count], new double[count]);
    }

    private double? At(ImmutableArray<double> shares, int moved, double by)
    {
        double[] there = [.. shares];
        there[moved] += by;
        var sized = SizeCell.At(faults, there);
        using var unit = predictor.Assume(sized);
        return unit.Scaled(reading);
    }

    /// <summary>All slopes at the first, the middle and the last cell; at the others of what matters there.</summary>
    private void FillSlopes()
    {
        var all = new bool[count];
        Array.Fill(all, true);
        Piece[] whole = [.. new[] { 0, pieces.Length / 2, pieces.Length - 1 }.Distinct().Select(n => pieces[n])];
        SlopesOf(whole[0], all);
        var spread = SameCentre * Math.Sqrt(whole[0].Variance);
        // A size that does not move the reading does not change its spread either.
        if (pieces.All(p => Math.Abs(p.Centre - whole[0].Centre) <= spread))
            (pieces, whole) = ([pieces[0]], [pieces[0]]);
        foreach (var p in whole.Skip(1))
            SlopesOf(p, all);
        matters = [.. Enumerable.Range(0, count).Select(p => whole.Any(w => w.VarianceOf(p) > LeastShare * w.Variance))];
        foreach (var p in pieces.Except(whole))
            SlopesOf(p, matters);
    }

    private void SlopesOf(Piece piece, bool[] which) =>
        predictor.SlopesOf(reading, piece.Faults, piece.Centre, which, piece.Slopes, piece.Bends);

    private void Draw()
    {
        for (var n = 0; n < pieces.Length; n++)
        {
            var (from, to) = (Start(n), Start(n + 1));
            var part = quick.AsSpan(from, to - from);
            part.Fill(pieces[n].Centre);
            for (var p = 0; p < count; p++)
            {
                if (!matters[p])
                    continue;
                var (slope, bend) = (pieces[n].Slopes[p], pieces[n].Bends[p]);
                var z = NormalDraws.OfParameter(p)[from..to];
                for (var k = 0; k < part.Length; k++)
                    part[k] += z[k] * (slope + (bend * z[k]));
            }
            for (var f = 0; f < pieces[n].Trends.Length; f++)
            {
                var (trend, curve) = (pieces[n].Trends[f], pieces[n].Curves[f]);
                var u = NormalDraws.OfSize(f)[from..to];
                for (var k = 0; k < part.Length; k++)
                    part[k] += (u[k] - 0.5) * (trend + (curve * (u[k] - 0.5)));
            }
        }
        quick.CopyTo(sorted, 0);
        for (var k = 0; k < ranked.Length; k++)
            ranked[k] = k;
        Array.Sort(sorted, ranked);
    }

    private int Start(int piece) => NormalDraws.Count * piece / pieces.Length;

    private double QuickQuantile(double share)
    {
        var at = (share * NormalDraws.Count) - 0.5;
        var n = (int)at;
        return sorted[n] + ((at - n) * (sorted[n + 1] - sorted[n]));
    }

    private double Shown(double onScale) => set.Errors[reading].FromScale(onScale);

    /// <summary>How far the drawn units around a quantile lie, when they are solved, from where the quadratic law puts them.</summary>
    private double Correction(double share, double end, double width)
    {
        var middle = (int)(share * NormalDraws.Count);
        var (sum, squares, n) = (0.0, 0.0, 0);
        while (n < MostExact)
        {
            // From the middle outwards, on both sides in turn.
            var draw = ranked[middle + (n % 2 == 0 ? n / 2 : -(n + 1) / 2)];
            var off = Exact(draw) - quick[draw];
            (sum, squares, n) = (sum + off, squares + (off * off), n + 1);
            if (n < LeastExact)
                continue;
            var error = Math.Sqrt(Math.Max(squares - (sum * sum / n), 0) / (n * (n - 1.0)));
            var moved = end + (sum / n);
            if (Shown(moved + error) - Shown(moved - error) < 2 * GoodEnough * width)
                break;
        }
        return sum / n;
    }

    private double Exact(int draw)
    {
        var at = pieces.Length - 1;
        while (Start(at) > draw)
            at--;
        var piece = pieces[at];
        for (var p = 0; p < count; p++)
            factors[p] = matters[p] ? Math.Exp(set.Model.Parameters[p].Sigma * NormalDraws.OfParameter(p)[draw]) : 1;
        var shares = new double[piece.Trends.Length];
        for (var f = 0; f < shares.Length; f++)
            shares[f] = piece.Cell.Shares[f] + (piece.Cell.Width * (NormalDraws.OfSize(f)[draw] - 0.5));
        var sized = SizeCell.At(faults, shares);
        using var unit = predictor.Assume(sized, factors);
        // Where it cannot be solved the quadratic law stands.
        return unit.Scaled(reading) ?? quick[draw];
    }
}
