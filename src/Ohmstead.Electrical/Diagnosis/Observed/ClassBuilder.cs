using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Observed;

/// <summary>Finds what each fault alone does to the readings taken, and merges the modes that do the same.</summary>
internal static class ClassBuilder
{
    /// <summary>Modes whose readings differ by less than this at every size are one class [limits of the meter's error].</summary>
    private const double AlikeWithin = 0.05;

    /// <summary>So few modes are not merged: each is searched by itself, and beside its twins.</summary>
    private const int FewModes = 16;

    /// <param name="rows">What is known of the readings taken, one by one.</param>
    /// <param name="still">The modes that move no reading taken; they keep their chances.</param>
    public static FaultClass[] Build(Evidence evidence, ReadingRow[] rows, double[] odds, Workers workers, out List<FaultMode> still)
    {
        var catalogue = evidence.Set.Catalogue;
        var alone = new List<FaultClass>();
        still = [];
        foreach (var mode in catalogue.Modes)
        {
            if (odds[mode.Number] <= 0)
                continue;
            var c = new FaultClass(mode.Number, [mode], odds, catalogue.ElementOf);
            FillFrom(c, rows);
            if (c.Moves.Contains(true) || evidence.Symptoms.Concerns(mode))
                alone.Add(c);
            else
                still.Add(mode);
        }
        var groups = alone.Count <= FewModes ? [.. alone.Select(c => new List<FaultClass> { c })] : Groups(alone, evidence);
        var searched = catalogue.OddsWithout(odds, still);
        var classes = groups.Select((g, n) => new FaultClass(n, g.SelectMany(c => c.Modes), searched, catalogue.ElementOf)).ToArray();
        workers.Each(
            classes.Length,
            (n, worker) =>
            {
                var single = groups[n].First(c => c.Lead == classes[n].Lead);
                if (classes[n].Min == single.Min && classes[n].Max == single.Max)
                    (classes[n].Curve, classes[n].Moves) = (single.Curve, single.Moves);
                else
                    Fill(
                        classes[n],
                        [.. rows.Select((row, r) => single.Moves[r] ? ReadingLibrary.CurveOf(classes[n], r, row.Sound, worker) : null)]
                    );
            }
        );
        return classes;
    }

    private static void FillFrom(FaultClass c, ReadingRow[] rows) => Fill(c, [.. rows.Select(r => r.Curves[c.Lead.Number])]);

    private static void Fill(FaultClass c, double[]?[] byReading)
    {
        c.Moves = [.. byReading.Select(b => b is not null)];
        c.Curve = [.. c.PointShares.Select((_, k) => byReading.Select(b => b?[k] ?? 0).ToArray())];
    }

    private static List<List<FaultClass>> Groups(List<FaultClass> alone, Evidence evidence)
    {
        var groups = new List<List<FaultClass>>();
        foreach (var c in alone)
        {
            var home = groups.FirstOrDefault(g =>
                IsAlike(g[0], c) && evidence.Symptoms.KeyOf(g[0].Lead) == evidence.Symptoms.KeyOf(c.Lead)
            );
            if (home is null)
                groups.Add([c]);
            else
                home.Add(c);
        }
        return groups;
    }

    private static bool IsAlike(FaultClass a, FaultClass b)
    {
        if (a.HasSize != b.HasSize || a.IsDiscrete != b.IsDiscrete || !a.Moves.AsSpan().SequenceEqual(b.Moves))
            return false;
        if (!a.HasSize)
            return Vectors.LargestDifference(a.Curve[0], b.Curve[0]) < AlikeWithin;
        if (a.IsDiscrete)
            return a.Curve.Length == b.Curve.Length
                && a.Curve.Zip(b.Curve).All(p => Vectors.LargestDifference(p.First, p.Second) < AlikeWithin);
        var (low, high) = (Math.Max(a.Min, b.Min), Math.Min(a.Max, b.Max));
        if (high < 2 * low)
            return false;
        var curve = new double[a.Moves.Length];
        var other = new double[a.Moves.Length];
        for (var k = 0; k <= 4; k++)
        {
            var size = low * Math.Pow(high / low, k / 4.0);
            CurveShape.At(a.PointShares, a.Curve, Math.Log(size / a.Min) / Math.Log(a.Max / a.Min), curve);
            CurveShape.At(b.PointShares, b.Curve, Math.Log(size / b.Min) / Math.Log(b.Max / b.Min), other);
            // Where the ranges differ the curves are interpolated between other points; that alone may differ a little.
            if (Vectors.LargestDifference(curve, other) > (a.Min == b.Min && a.Max == b.Max ? AlikeWithin : 10 * AlikeWithin))
                return false;
        }
        return true;
    }
}
