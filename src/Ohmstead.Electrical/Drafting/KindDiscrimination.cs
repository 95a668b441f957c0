using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>Finds what tells the kinds apart that an outline may stand for.</summary>
internal static class KindDiscrimination
{
    /// <summary>A kind less probable than this is not told apart any more.</summary>
    private const double LeastProbable = 0.01;

    private const int MostKinds = 6,
        MostListed = 10;

    /// <summary>Less is nothing to go to the bench for [bit].</summary>
    private const double LeastBits = 0.02;

    /// <summary>Two kinds are told apart by a reading when their middles are this many deviations apart.</summary>
    private const double Apart = 2;

    /// <summary>Taking the cover off to look: common practice, no source [min].</summary>
    private const double MinutesToLook = 15;

    private const double BandDeviations = 1.959964;

    public static ImmutableArray<DiscriminatingReading> Of(
        ImmutableArray<(KindReadings Kind, UnitModel Model, double Probability)> kinds,
        IReadOnlyCollection<ReadingSpec> taken
    )
    {
        if (kinds.Length < 2)
            return [];
        var weighed = kinds.Where(k => k.Probability >= LeastProbable).Take(MostKinds).ToList();
        var total = weighed.Sum(k => k.Probability);
        double[] chances = [.. weighed.Select(k => k.Probability / total)];
        var readings = weighed[0]
            .Model.Sheet.Readings.Where(r =>
                !r.IsOpenCase
                && !taken.Any(t => t.Id == r.Id)
                && weighed.All(k => k.Model.Sheet.FindReading(r.Id) is { } same && Judging.IsEvidence(k.Model, same, same.State))
            )
            .ToList();
        var predicted = weighed
            .Select(k => Prediction.Run(k.Model, readings.Select(r => k.Model.Sheet.FindReading(r.Id)!).Select(r => (r, r.State)), []))
            .ToArray();
        var found = new List<DiscriminatingReading>();
        for (var r = 0; r < readings.Count && weighed.Count > 1; r++)
        {
            if (predicted.Any(p => !p[r].CanJudge || double.IsInfinity(p[r].High)))
                continue;
            var bells = predicted.Select(p => Bell(p[r])).ToArray();
            var bits = Information(chances, bells);
            if (bits < LeastBits)
                continue;
            ImmutableArray<string> between =
            [
                .. weighed
                    .Where(
                        (_, a) =>
                            bells
                                .Where((_, b) => b != a)
                                .Any(b => Math.Abs(bells[a].Middle - b.Middle) > Apart * double.Hypot(bells[a].Deviation, b.Deviation))
                    )
                    .Select(k => k.Kind.Kind.Id),
            ];
            found.Add(
                new(readings[r].Id, bits, readings[r].Minutes, between.IsEmpty ? [.. weighed.Take(2).Select(k => k.Kind.Kind.Id)] : between)
            );
        }
        return
        [
            .. found
                .Concat(Looks(weighed.Select(k => k.Kind).ToList(), chances))
                .OrderByDescending(t => t.Bits / t.Minutes)
                .ThenBy(t => t.Id, StringComparer.Ordinal)
                .Take(MostListed),
        ];
    }

    /// <summary>A look at each word that is still open.</summary>
    private static IEnumerable<DiscriminatingReading> Looks(List<KindReadings> kinds, double[] chances)
    {
        foreach (var path in kinds.SelectMany(k => k.Kind.Choices.Keys).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            var bits = Enumerable
                .Range(0, kinds.Count)
                .GroupBy(n => kinds[n].Kind.Choices[path], StringComparer.Ordinal)
                .Select(g => g.Sum(n => chances[n]))
                .Sum(p => -p * Math.Log2(p));
            if (bits >= LeastBits)
                yield return new($"look:{path}", bits, MinutesToLook, [.. kinds.Select(k => k.Kind.Id)]);
        }
    }

    /// <summary>A reading of a kind on the scale of a usual meter, its error included.</summary>
    internal static (double Middle, double Deviation) Bell(PredictedReading p)
    {
        var error = Meter.Usual.For(p.Spec.Quantity);
        var (low, high) = (error.ToScale(p.Low), error.ToScale(p.High));
        return ((low + high) / 2, Math.Sqrt(Math.Pow((high - low) / (2 * BandDeviations), 2) + (1.0 / 3)));
    }

    /// <summary>How much a reading says about which of some bells it was drawn from [bit]: what is not known of it less what each leaves open.</summary>
    internal static double Information(double[] chances, (double Middle, double Deviation)[] bells)
    {
        const int steps = 400;
        const double far = 5;
        var (low, high) = (bells.Min(b => b.Middle - (far * b.Deviation)), bells.Max(b => b.Middle + (far * b.Deviation)));
        // Where one bell is narrow and another wide, each is walked through by its own steps.
        var bits = 0.0;
        for (var k = 0; k < bells.Length; k++)
        {
            var (middle, deviation) = bells[k];
            for (var n = 0; n < steps; n++)
            {
                var z = far * ((2 * (n + 0.5) / steps) - 1);
                var x = Math.Clamp(middle + (z * deviation), low, high);
                var own = Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
                var mixed = Enumerable
                    .Range(0, bells.Length)
                    .Sum(j =>
                        chances[j]
                        * Math.Exp(-Math.Pow((x - bells[j].Middle) / bells[j].Deviation, 2) / 2)
                        / (Math.Sqrt(2 * Math.PI) * bells[j].Deviation)
                    );
                bits += chances[k] * own * (2 * far / steps) * Math.Log2(own / deviation / Math.Max(mixed, 1e-300));
            }
        }
        return Math.Max(bits, 0);
    }
}
