using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>Finds what each fault alone does to the readings taken, and merges the modes that do the same.</summary>
internal static class ClassBuilder
{
    /// <summary>Below this a reading is not moved [limits of the meter's error].</summary>
    private const double LeastMove = 0.003;

    /// <summary>Modes whose readings differ by less than this at every size are one class [limits of the meter's error].</summary>
    private const double AlikeWithin = 0.05;

    /// <param name="still">The modes that move no reading taken; they keep their chances.</param>
    public static FaultClass[] Build(Evidence evidence, double[] odds, double[] sound, Crew crew, out List<FaultMode> still)
    {
        var catalogue = evidence.Set.Catalogue;
        var alone = new FaultClass?[catalogue.Modes.Length];
        crew.Each(alone.Length, (n, worker) =>
        {
            if (odds[n] <= 0) return;
            var c = new FaultClass(n, [catalogue.Modes[n]], odds, catalogue.ElementOf);
            FillCurve(c, sound, worker);
            alone[n] = c;
        });
        still = [.. alone.OfType<FaultClass>().Where(c => !c.Moves.Any(m => m) && evidence.ToldKey(c.Lead).All(ch => ch == '|')).Select(c => c.Lead)];
        var quiet = still.Select(m => m.Number).ToHashSet();
        var groups = Groups([.. alone.OfType<FaultClass>().Where(c => !quiet.Contains(c.Number))], evidence);
        var classes = groups.Select((g, n) => new FaultClass(n, g.SelectMany(c => c.Modes), odds, catalogue.ElementOf)).ToArray();
        crew.Each(classes.Length, (n, worker) =>
        {
            var single = alone[classes[n].Lead.Number]!;
            if (classes[n].Min == single.Min && classes[n].Max == single.Max) (classes[n].Curve, classes[n].Moves) = (single.Curve, single.Moves);
            else FillCurve(classes[n], sound, worker);
        });
        return classes;
    }

    private static void FillCurve(FaultClass c, double[] sound, Worker worker)
    {
        c.Curve = [.. c.PointShares.Select(_ => new double[sound.Length])];
        c.Moves = new bool[sound.Length];
        for (var k = 0; k < c.PointShares.Length; k++)
        {
            Fault[] faults = [c.At(c.PointShares[k])];
            worker.Predictor.Begin(faults);
            for (var r = 0; r < sound.Length; r++)
            {
                c.Curve[k][r] = worker.Predictor.Scaled(r, faults) - sound[r];
                c.Moves[r] |= Math.Abs(c.Curve[k][r]) > LeastMove;
            }
        }
    }

    private static List<List<FaultClass>> Groups(FaultClass[] alone, Evidence evidence)
    {
        var groups = new List<List<FaultClass>>();
        foreach (var c in alone)
        {
            var home = groups.FirstOrDefault(g => evidence.ToldKey(g[0].Lead) == evidence.ToldKey(c.Lead) && IsAlike(g[0], c));
            if (home is null) groups.Add([c]);
            else home.Add(c);
        }
        return groups;
    }

    private static bool IsAlike(FaultClass a, FaultClass b)
    {
        if (a.HasSize != b.HasSize || a.IsDiscrete != b.IsDiscrete || !a.Moves.AsSpan().SequenceEqual(b.Moves)) return false;
        if (!a.HasSize) return Distance(a.Curve[0], b.Curve[0]) < AlikeWithin;
        if (a.IsDiscrete) return a.Curve.Length == b.Curve.Length && a.Curve.Zip(b.Curve).All(p => Distance(p.First, p.Second) < AlikeWithin);
        var (low, high) = (Math.Max(a.Min, b.Min), Math.Min(a.Max, b.Max));
        if (high < 2 * low) return false;
        var curve = new double[a.Moves.Length];
        var other = new double[a.Moves.Length];
        for (var k = 0; k <= 4; k++)
        {
            var size = low * Math.Pow(high / low, k / 4.0);
            CurveShape.At(a.PointShares, a.Curve, Math.Log(size / a.Min) / Math.Log(a.Max / a.Min), curve);
            CurveShape.At(b.PointShares, b.Curve, Math.Log(size / b.Min) / Math.Log(b.Max / b.Min), other);
            // Where the ranges differ the curves are interpolated between other points; that alone may differ a little.
            if (Distance(curve, other) > (a.Min == b.Min && a.Max == b.Max ? AlikeWithin : 10 * AlikeWithin)) return false;
        }
        return true;
    }

    private static double Distance(double[] a, double[] b)
    {
        var worst = 0.0;
        for (var n = 0; n < a.Length; n++) worst = Math.Max(worst, Math.Abs(a[n] - b[n]));
        return worst;
    }
}
