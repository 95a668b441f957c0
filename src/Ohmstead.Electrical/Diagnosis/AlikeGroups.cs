using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// Groups of modes that the readings taken do not tell apart: no reading differs by more than the meter's limit. Compared is
/// what each class does alone, at its estimated size; another is alike when some size of it gives the same. A class that
/// moves no reading beyond the limit is told from nothing and stands in no group.
/// </summary>
internal static class AlikeGroups
{
    private const double MeterLimit = 1;
    private const int Grid = 24;
    private const int Narrowings = 24;

    /// <summary>The groups of two modes or more.</summary>
    public static ImmutableArray<ImmutableArray<FaultMode>> Of(FaultClass[] classes, Func<FaultClass, double> shareOf, double[] byClass)
    {
        var all = classes.Select(c => new Reach(c, shareOf(c))).Where(r => r.Largest >= MeterLimit);
        var groups = new List<List<Reach>>();
        foreach (var r in all.OrderByDescending(r => byClass[r.Class.Number]).ThenBy(r => r.Class.Number))
        {
            var home = groups.Find(g => g.TrueForAll(o => o.CanShow(r.Estimated) || r.CanShow(o.Estimated)));
            if (home is null) groups.Add([r]);
            else home.Add(r);
        }
        return [.. groups.Select(g => g.SelectMany(r => r.Class.Modes).ToImmutableArray()).Where(g => g.Length > 1)];
    }

    /// <summary>What a class does to the readings at its estimated size, and at every size it may have.</summary>
    private sealed class Reach
    {
        private readonly double[] shares;
        private readonly double[][] effects;

        public Reach(FaultClass c, double share)
        {
            Class = c;
            shares = c.IsContinuous ? [.. Enumerable.Range(0, Grid + 1).Select(k => k / (double)Grid)] : c.PointShares;
            effects = [.. shares.Select(At)];
            Estimated = c.IsContinuous ? At(share) : effects[Array.IndexOf(shares, shares.MinBy(s => Math.Abs(s - share)))];
        }

        public FaultClass Class { get; }

        /// <summary>Displacement of the readings at the estimated size [meter limits].</summary>
        public double[] Estimated { get; }

        public double Largest => Estimated.Length == 0 ? 0 : Estimated.Max(Math.Abs);

        /// <summary>True when some size of the class gives these readings.</summary>
        public bool CanShow(double[] wanted)
        {
            var distances = effects.Select(e => Distance(e, wanted)).ToArray();
            var nearest = Array.IndexOf(distances, distances.Min());
            if (distances[nearest] < MeterLimit) return true;
            if (!Class.IsContinuous) return false;
            var (low, high) = (Math.Max(nearest - 1, 0), Math.Min(nearest + 1, Grid));
            // A large size moves a reading by many limits from one step of the grid to the next: the match may lie between.
            var step = Math.Max(Distance(effects[low], effects[nearest]), Distance(effects[high], effects[nearest]));
            return distances[nearest] - step < MeterLimit && Narrowed(shares[low], shares[high], wanted) < MeterLimit;
        }

        /// <summary>The least distance between two shares, by thirds.</summary>
        private double Narrowed(double low, double high, double[] wanted)
        {
            for (var n = 0; n < Narrowings; n++)
            {
                var third = (high - low) / 3;
                if (Distance(At(low + third), wanted) <= Distance(At(high - third), wanted)) high -= third;
                else low += third;
            }
            return Distance(At((low + high) / 2), wanted);
        }

        private double[] At(double share)
        {
            var at = new double[Class.Moves.Length];
            CurveShape.PointAt(Class, Class.Curve, share, at);
            return at;
        }
    }

    private static double Distance(double[] a, double[] b)
    {
        var worst = 0.0;
        for (var n = 0; n < a.Length; n++) worst = Math.Max(worst, Math.Abs(a[n] - b[n]));
        return worst;
    }
}
