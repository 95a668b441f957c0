using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>What each cold or low-voltage reading shows on the right wiring and on each mistake, on the meter's scale.</summary>
internal sealed class MistakeTable
{
    /// <summary>An ohmmeter's reading from here on is an open place with its leakage [Ω].</summary>
    private const double OpenOhms = 20e3;

    private readonly ImmutableArray<(ReadingSpec Spec, ReadingState State, MeterError Error)> readings;
    private readonly TypeSheet sheet;

    /// <param name="progress">Told the share of the mistakes that are done [0..1], from any thread.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public MistakeTable(
        TypeSheet sheet,
        ImmutableArray<Mistake> mistakes,
        UnitReadings taken,
        Action<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        this.sheet = sheet;
        Mistakes = mistakes;
        var model = new UnitModel(sheet);
        readings =
        [
            .. sheet
                .Readings.Where(r => r.State.Source is not { IsMains: true })
                .Select(r =>
                    taken.Readings.LastOrDefault(t => t.Spec.Id == r.Id && t.IsTaken) is { } last
                        ? (r, last.State, taken.ErrorOf(last))
                        : (r, taken.StateOf(sheet, r), taken.Meter.For(r.Quantity))
                )
                .Where(r => Judging.IsEvidence(model, r.Item1, r.Item2)),
        ];
        var set = new ReadingSet(model, new FaultCatalogue(model), readings);
        Set = set;
        var stoppable = new ParallelOptions { CancellationToken = cancellation };
        (Right, Slopes, Wrong) = (new double[set.Count], new double[set.Count][], new double[mistakes.Length][][]);
        ReadRight(stoppable);
        ReadWrong(stoppable, progress);
    }

    private void ReadRight(ParallelOptions stoppable) =>
        Parallel.For(
            0,
            Set.Count,
            stoppable,
            () => new Predictor(Set),
            (r, _, predictor) =>
            {
                var nominal = predictor.OfSound(r);
                Right[r] = Cut(r, nominal);
                Slopes[r] = new double[Set.Model.Parameters.Length];
                // Above the cut all values are one, whatever the unit.
                if (nominal <= Right[r])
                    predictor.SlopesOf(r, [], nominal, [.. Slopes[r].Select(_ => true)], Slopes[r], new double[Slopes[r].Length]);
                return predictor;
            },
            _ => { }
        );

    private void ReadWrong(ParallelOptions stoppable, Action<double>? progress)
    {
        var done = 0;
        Parallel.For(
            0,
            Mistakes.Length,
            stoppable,
            m =>
            {
                Wrong[m] = [.. Mistakes[m].Sizes.Select(s => Shown(Mistakes[m].Make(sheet, s)))];
                progress?.Invoke((double)Interlocked.Increment(ref done) / Mistakes.Length);
            }
        );
    }

    public ImmutableArray<Mistake> Mistakes { get; }

    public ReadingSet Set { get; }

    /// <summary>By reading: on the right wiring.</summary>
    public double[] Right { get; }

    /// <summary>By reading and parameter: movement for one standard deviation.</summary>
    public double[][] Slopes { get; }

    /// <summary>By mistake, size and reading.</summary>
    public double[][][] Wrong { get; }

    public ReadingSpec SpecOf(int reading) => readings[reading].Spec;

    /// <summary>The readings of a circuit that was wired otherwise; one that cannot be solved shows what the right one does, and so nothing.</summary>
    public double[] Shown(TypeSheet other)
    {
        var model = new UnitModel(other);
        var set = new ReadingSet(model, new FaultCatalogue(model), readings);
        using var wired = new Predictor(set).Assume();
        return [.. Enumerable.Range(0, set.Count).Select(r => wired.Scaled(r) is { } at ? Cut(r, at) : Right[r])];
    }

    /// <summary>The readings with several mistakes at once, each at one of its sizes.</summary>
    public double[] Shown(IEnumerable<(Mistake Mistake, double Size)> several) =>
        Shown(several.Aggregate(sheet, (made, m) => m.Mistake.Make(made, m.Size)));

    /// <summary>
    /// Above its range a meter shows OL, whatever lies there. An ohmmeter that reads more than any part of the circuit has reads
    /// what leaks across an open place, and that differs from unit to unit by more than any mistake: all such values are one.
    /// </summary>
    public double Cut(int reading, double scaled) =>
        Math.Min(scaled, SpecOf(reading).Quantity == Quantity.Ohms ? Set.Errors[reading].ToScale(OpenOhms) : Set.OverRangeOnScale(reading));

    /// <summary>
    /// The law of some readings among units that show <paramref name="shown"/> when their parts are nominal. The relative spread of
    /// a reading is taken from rightly wired units: where a mistake leaves less of a value, less of it varies.
    /// </summary>
    public Gaussian Law(ReadOnlySpan<int> of, double[] shown)
    {
        var (n, c) = (of.Length, new double[of.Length * of.Length]);
        for (var a = 0; a < n; a++)
        for (var b = 0; b <= a; b++)
            c[(a * n) + b] = c[(b * n) + a] =
                (Share(of[a], shown) * Share(of[b], shown) * Vectors.Dot(Slopes[of[a]], Slopes[of[b]])) + Set.ErrorCovariance(of[a], of[b]);
        return new Gaussian(c, n);
    }

    /// <summary>How far a value moves on the scale when it changes by a share, against the right wiring's value.</summary>
    private double Share(int reading, double[] shown) =>
        Math.Min(2, Swing(reading, shown[reading]) / Math.Max(Swing(reading, Right[reading]), 1e-9));

    private double Swing(int reading, double scaled)
    {
        const double step = 0.01;
        var value = Set.Errors[reading].FromScale(scaled);
        return Math.Abs(Set.Errors[reading].ToScale(value * (1 + step)) - Set.Errors[reading].ToScale(value * (1 - step)));
    }
}
