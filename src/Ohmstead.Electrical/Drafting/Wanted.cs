using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>Finds the readings that would narrow the bands of a drafted sheet most.</summary>
internal static class Wanted
{
    private const int MostWanted = 12;

    /// <summary>A reading that narrows the bands by less than this is not wanted [nats, over all bands].</summary>
    private const double LeastGain = 0.3;

    /// <summary>
    /// Greedy, by what a reading takes from the bands of all readings of the closed unit per minute, the doubt about the kind taken as
    /// Gaussian about the sheet and the response as straight. Cost: two solutions of each closed reading for each doubtful value.
    /// </summary>
    /// <param name="taken">Readings that were taken, whatever they were called.</param>
    public static ImmutableArray<WantedReading> Of(UnitModel model, IReadOnlyCollection<ReadingSpec> taken)
    {
        int[] doubtful = [.. Enumerable.Range(0, model.Parameters.Length).Where(p => model.Parameters[p].KindSigma > 0)];
        ReadingSpec[] specs = [.. model.Sheet.Readings.Where(r => !r.IsOpenCase && Judging.IsEvidence(model, r, r.State))];
        if (doubtful.Length == 0 || specs.Length == 0)
            return [];
        var (slopes, noise) = Slopes(model, specs, doubtful);
        return Greedy(model, specs, doubtful, slopes, noise, taken);
    }

    /// <summary>By reading and doubtful value: movement on the meter's scale for one deviation of the doubt; and the variance that sound units and the meter have.</summary>
    private static (double[][] Slopes, double[] Noise) Slopes(UnitModel model, ReadingSpec[] specs, int[] doubtful)
    {
        var set = new ReadingSet(model, new FaultCatalogue(model), specs.Select(r => (r, r.State)), Meter.Usual);
        var (slopes, noise) = (new double[specs.Length][], new double[specs.Length]);
        var which = new bool[model.Parameters.Length];
        foreach (var p in doubtful)
            which[p] = true;
        Parallel.For(
            0,
            specs.Length,
            () => new Predictor(set),
            (r, _, predictor) =>
            {
                var (own, bends) = (new double[which.Length], new double[which.Length]);
                predictor.SlopesOf(r, [], predictor.OfSound(r), which, own, bends);
                slopes[r] = [.. doubtful.Select(p => own[p] * model.Parameters[p].KindSigma / model.Parameters[p].Sigma)];
                noise[r] =
                    set.ErrorCovariance(r, r)
                    + doubtful.Sum(p => Math.Pow(own[p] * model.Parameters[p].UnitSigma / model.Parameters[p].Sigma, 2));
                return predictor;
            },
            _ => { }
        );
        return (slopes, noise);
    }

    private static ImmutableArray<WantedReading> Greedy(
        UnitModel model,
        ReadingSpec[] specs,
        int[] doubtful,
        double[][] slopes,
        double[] noise,
        IReadOnlyCollection<ReadingSpec> taken
    )
    {
        var n = doubtful.Length;
        var covariance = new double[n * n];
        for (var p = 0; p < n; p++)
            covariance[(p * n) + p] = 1;
        var wanted = ImmutableArray.CreateBuilder<WantedReading>();
        var left = Enumerable.Range(0, specs.Length).Where(r => !taken.Any(t => WholeReadings.IsSame(model.Sheet, specs[r], t))).ToList();
        while (wanted.Count < MostWanted && left.Count > 0)
        {
            var moves = slopes.Select(s => Times(covariance, s, n)).ToArray();
            var bands = Enumerable.Range(0, specs.Length).Select(r => Vectors.Dot(slopes[r], moves[r]) + noise[r]).ToArray();
            var best = left.OrderByDescending(r => Gain(r, slopes, moves, bands) / Math.Max(specs[r].Minutes, 0.5))
                .ThenBy(r => specs[r].Id, StringComparer.Ordinal)
                .First();
            if (Gain(best, slopes, moves, bands) < LeastGain)
                break;
            var before = Enumerable.Range(0, n).Select(p => covariance[(p * n) + p]).ToArray();
            for (var p = 0; p < n; p++)
                Vectors.AddScaled(covariance.AsSpan(p * n, n), moves[best], -moves[best][p] / bands[best]);
            int[] fixes =
            [
                .. Enumerable
                    .Range(0, n)
                    .Where(p => covariance[(p * n) + p] <= before[p] / 2 && before[p] > 0.1)
                    .OrderBy(p => covariance[(p * n) + p]),
            ];
            // Where it halves no single value, it tells most of the one that it moves most.
            if (fixes.Length == 0)
                fixes = [Enumerable.Range(0, n).MinBy(p => covariance[(p * n) + p] / before[p])];
            var first = fixes[0];
            wanted.Add(
                new WantedReading(
                    specs[best],
                    specs[best].Minutes,
                    [.. fixes.Select(p => model.Parameters[doubtful[p]].Path)],
                    Math.Sqrt(Math.Max(covariance[(first * n) + first], 0)) * model.Parameters[doubtful[first]].KindSigma
                )
            );
            left.Remove(best);
        }
        return wanted.ToImmutable();
    }

    private static double[] Times(double[] covariance, double[] slopes, int n) =>
        [.. Enumerable.Range(0, n).Select(p => Vectors.Dot(covariance.AsSpan(p * n, n), slopes))];

    /// <summary>Sum over all bands of the logarithm by which they shrink.</summary>
    private static double Gain(int reading, double[][] slopes, double[][] moves, double[] bands)
    {
        var gain = 0.0;
        for (var r = 0; r < slopes.Length; r++)
        {
            var shared = Vectors.Dot(slopes[r], moves[reading]);
            gain -= 0.5 * Math.Log(Math.Max(1 - (shared * shared / (bands[reading] * bands[r])), 1e-9));
        }
        return gain;
    }
}
