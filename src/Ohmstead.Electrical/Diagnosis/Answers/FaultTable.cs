using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>From probabilities of classes to those of every mode of the catalogue.</summary>
internal static class FaultTable
{
    public static ImmutableArray<FaultProbability> Of(
        FaultCatalogue catalogue,
        FaultClass[] classes,
        List<FaultMode> still,
        Marginals marginals,
        double[] chances
    )
    {
        var p = new double[catalogue.Modes.Length];
        var sizes = new (double Share, double Deviation, FaultClass? Class)[p.Length];
        foreach (var c in classes)
        {
            var (share, deviation) = SizeOf(c, marginals);
            var parts = c.SharesOfModes(share, deviation);
            for (var k = 0; k < c.Modes.Length; k++)
            {
                p[c.Modes[k].Number] = marginals.ByClass[c.Number] * parts[k];
                sizes[c.Modes[k].Number] = (share, deviation, c);
            }
        }
        AddStill(catalogue, still, chances, p);
        return
        [
            .. catalogue.Modes.OrderByDescending(m => p[m.Number]).ThenBy(m => m.Number).Select(m => Row(m, p[m.Number], sizes[m.Number])),
        ];
    }

    /// <summary>Modes that move nothing keep their chance, as far as their element is not found in another mode.</summary>
    private static void AddStill(FaultCatalogue catalogue, List<FaultMode> still, double[] chances, double[] p)
    {
        var found = new double[catalogue.ElementCount];
        foreach (var m in catalogue.Modes)
            AddTo(found, catalogue, m, p[m.Number]);
        var prior = new double[catalogue.ElementCount];
        var quiet = still.Select(m => m.Number).ToHashSet();
        foreach (var m in catalogue.Modes)
            if (!quiet.Contains(m.Number))
                AddTo(prior, catalogue, m, chances[m.Number]);
        double Left(int e) => Math.Max(0, 1 - found[e]) / Math.Max(1 - prior[e], 1e-9);
        foreach (var m in still)
            p[m.Number] = m.SharedElements.Aggregate(chances[m.Number] * Left(catalogue.ElementOf[m.Number]), (q, e) => q * Left(e));
    }

    /// <summary>A fault that parts share takes each of them.</summary>
    private static void AddTo(double[] sums, FaultCatalogue catalogue, FaultMode m, double chance)
    {
        sums[catalogue.ElementOf[m.Number]] += chance;
        foreach (var e in m.SharedElements)
            sums[e] += chance;
    }

    /// <summary>Estimated size of a class as a share of its range, over the sets that hold it.</summary>
    public static (double Share, double Deviation) SizeOf(FaultClass c, Marginals marginals)
    {
        if (!c.HasSize)
            return (0, 0);
        var (weight, sum, squares) = (0.0, 0.0, 0.0);
        for (var n = 0; n < marginals.Sets.Length; n++)
        {
            var h = marginals.Sets[n];
            var k = Array.IndexOf(h.Classes, c);
            if (k < 0)
                continue;
            var deviation = h.DeviationOf(k);
            var w = marginals.Weights[n];
            weight += w;
            sum += w * h.Shares[k];
            squares += w * ((h.Shares[k] * h.Shares[k]) + (deviation * deviation));
        }
        if (weight < 1e-6)
            return (0.5, 0.3);
        var mean = sum / weight;
        return (mean, Math.Sqrt(Math.Max((squares / weight) - (mean * mean), 1e-8)));
    }

    private static FaultProbability Row(FaultMode m, double p, (double Share, double Deviation, FaultClass? Class) size)
    {
        if (!m.HasSize && m.Size == TypeSheets.SizeKind.None)
            return new FaultProbability(m, p, null, null, null);
        if (size.Class is not { } c)
            return new FaultProbability(m, p, m.MiddleSize, m.Min, m.Max);
        double Within(double share) => Math.Clamp(c.SizeAt(Math.Clamp(share, 0, 1)), m.Min, m.Max);
        return new FaultProbability(
            m,
            p,
            Within(size.Share),
            Within(size.Share - (1.96 * size.Deviation)),
            Within(size.Share + (1.96 * size.Deviation))
        );
    }
}
