using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>Groups of modes that the readings taken do not tell apart: no reading differs by more than the meter's limit.</summary>
internal static class AlikeGroups
{
    private const double MeterLimit = 1;
    private const int Grid = 24;

    /// <summary>
    /// Compares what each class does alone, at its estimated size; another is alike when some size of it gives the same. A
    /// class that moves no reading beyond the limit is told from nothing and stands in no group.
    /// </summary>
    public static ImmutableArray<ImmutableArray<FaultMode>> Of(FaultClass[] classes, Func<FaultClass, double> shareOf, double[] byClass)
    {
        var effect = classes.Select(c => EffectAt(c, shareOf(c))).ToArray();
        var groups = new List<List<FaultClass>>();
        foreach (var c in classes.Where(c => Largest(effect[c.Number]) >= MeterLimit).OrderByDescending(c => byClass[c.Number]).ThenBy(c => c.Number))
        {
            var home = groups.Find(g => g.TrueForAll(o => IsAlike(o, c, effect)));
            if (home is null) groups.Add([c]);
            else home.Add(c);
        }
        return [.. groups.Select(g => g.SelectMany(c => c.Modes).ToImmutableArray()).Where(g => g.Length > 1)];
    }

    private static bool IsAlike(FaultClass a, FaultClass b, double[][] effect) => CanShow(b, effect[a.Number]) || CanShow(a, effect[b.Number]);

    /// <summary>True when some size of the class gives these readings.</summary>
    private static bool CanShow(FaultClass c, double[] wanted)
    {
        for (var k = 0; k <= Grid; k++)
        {
            var share = c.IsContinuous ? k / (double)Grid : c.PointShares[Math.Min(k, c.PointShares.Length - 1)];
            if (Distance(EffectAt(c, share), wanted) < MeterLimit) return true;
            if (!c.IsContinuous && k >= c.PointShares.Length - 1) return false;
        }
        return false;
    }

    private static double[] EffectAt(FaultClass c, double share)
    {
        var at = new double[c.Moves.Length];
        if (c.IsContinuous) CurveShape.At(c.PointShares, c.Curve, share, at);
        else c.Curve[Nearest(c.PointShares, share)].CopyTo(at, 0);
        return at;
    }

    private static int Nearest(double[] shares, double share) => Array.IndexOf(shares, shares.MinBy(s => Math.Abs(s - share)));

    private static double Largest(double[] a) => a.Length == 0 ? 0 : a.Max(Math.Abs);

    private static double Distance(double[] a, double[] b)
    {
        var worst = 0.0;
        for (var n = 0; n < a.Length && worst < MeterLimit; n++) worst = Math.Max(worst, Math.Abs(a[n] - b[n]));
        return worst;
    }
}
