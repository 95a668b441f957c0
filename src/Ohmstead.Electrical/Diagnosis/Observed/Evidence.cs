using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Observed;

/// <summary>What was read and told on one unit, and how likely it is for a set of faults.</summary>
internal sealed class Evidence
{
    private readonly double[] measured;
    private readonly int[] numeric;
    private readonly double[] highest;
    private readonly OverRangeReadings overRange;
    private readonly WrongReadings wrong;

    public Evidence(ReadingLibrary library, UnitReadings readings, double wrongReadingChance)
    {
        Taken = [.. readings.Readings.Where(r => r.IsTaken && Judging.IsEvidence(library.Model, r.Spec, r.State))];
        Set = new ReadingSet(library.Model, library.Catalogue, Taken.Select(t => (t.Spec, t.State, readings.ErrorOf(t))));
        numeric = [.. Places(Outcome.Value)];
        measured = [.. Taken.Select(OnScale)];
        highest = [.. Enumerable.Range(0, Taken.Length).Select(Set.OverRangeOnScale)];
        wrong = new WrongReadings(numeric.Select(n => (Taken[n].Value, Set.Errors[n])), wrongReadingChance);
        Symptoms = new SymptomEvidence(readings.Symptoms, Places(Outcome.Jumps));
        Bench = new BenchTable(this).Matching;
        overRange = new OverRangeReadings(Set, Places(Outcome.OverRange), wrong.LogAnywhere, Bench);
    }

    private Evidence(Evidence other, TakenReading[] taken, AssumedBench bench)
    {
        (Taken, Set, Symptoms, Bench, highest) = (taken, other.Set, other.Symptoms, bench, other.highest);
        (numeric, measured) = ([.. Places(Outcome.Value)], [.. taken.Select(OnScale)]);
        wrong = new WrongReadings(numeric.Select(n => (taken[n].Value, Set.Errors[n])), other.wrong.Chance);
        overRange = new OverRangeReadings(Set, Places(Outcome.OverRange), wrong.LogAnywhere, bench);
    }

    /// <summary>The same readings, taken on another bench.</summary>
    public Evidence On(AssumedBench bench) => new(this, Taken, bench);

    /// <summary>As if what was noted of two readings had been noted of each other.</summary>
    public Evidence Exchanged(int a, int b)
    {
        var taken = (TakenReading[])Taken.Clone();
        TakenReading As(TakenReading own, TakenReading other) => own with { Outcome = other.Outcome, Value = other.Value };
        (taken[a], taken[b]) = (As(Taken[a], Taken[b]), As(Taken[b], Taken[a]));
        return new(this, taken, Bench);
    }

    /// <summary>The bench that they are judged by.</summary>
    public AssumedBench Bench { get; }

    /// <summary>How wrong readings are noted.</summary>
    public WrongReadings Wrong => wrong;

    /// <summary>Those that showed OL.</summary>
    public OverRangeReadings OverRange => overRange;

    /// <summary>The readings taken that the model can judge.</summary>
    public TakenReading[] Taken { get; }

    public ReadingSet Set { get; }

    /// <summary>The symptoms, and what jumped.</summary>
    public SymptomEvidence Symptoms { get; }

    /// <summary>Places of the readings that are numbers.</summary>
    public ReadOnlySpan<int> Numeric => numeric;

    private double OnScale(TakenReading taken, int place) =>
        taken.Outcome == Outcome.OverRange ? Set.OverRangeOnScale(place) : Set.Errors[place].ToScale(taken.Value);

    private IEnumerable<int> Places(Outcome outcome) => Enumerable.Range(0, Taken.Length).Where(n => Taken[n].Outcome == outcome);

    /// <summary>The measured value on the meter's scale; of OL, the limit.</summary>
    public double Measured(int reading) => measured[reading];

    /// <summary>
    /// The largest difference between two predictions, as the meter shows them [limits of its error]: above the range all is OL.
    /// </summary>
    public double Apart(double[] a, double[] b)
    {
        var worst = 0.0;
        for (var n = 0; n < a.Length; n++)
            worst = Math.Max(worst, Math.Abs(Math.Min(a[n], highest[n]) - Math.Min(b[n], highest[n])));
        return worst;
    }

    /// <summary>The Gaussian around a prediction from the slopes (readings × parameters).</summary>
    public Spread SpreadOf(double[] slopes, double[] shift)
    {
        var n = numeric.Length;
        var covariance = new double[n * n];
        double[][] moves = [.. numeric.Select(r => Bench.Movements(slopes, r))];
        for (var i = 0; i < n; i++)
        for (var j = 0; j <= i; j++)
            covariance[(i * n) + j] = covariance[(j * n) + i] =
                Vectors.Dot(moves[i], moves[j])
                + (Bench.ErrorVarianceOn(Set.SpecOf(numeric[i]).Quantity) * Set.ErrorCovariance(numeric[i], numeric[j]));
        return new Spread(slopes, shift, new Gaussian(covariance, n));
    }

    /// <summary>What was read, in the quantity's unit; 0 where it is no number.</summary>
    public double Value(int reading) => Taken[reading].Outcome == Outcome.Value ? Taken[reading].Value : 0;

    /// <summary>How far a reading moves on the meter's scale for one of its unit, where it was read.</summary>
    public double SlopeOfScale(int reading) =>
        Taken[reading].Outcome == Outcome.Value ? 1 / Math.Max(Set.Errors[reading].LimitAt(Taken[reading].Value), 1e-9) : 0;

    /// <summary>True when it was taken on the line.</summary>
    public bool IsOnMains(int reading) => Taken[reading].State.Source is { IsDirect: false, IsMains: true };

    /// <summary>
    /// The spread with the sizes of some faults left free to a deviation (of their share): what neighbours of a set are judged
    /// with, since the sizes may have to give way to a new fault.
    /// </summary>
    public Spread Free(Spread spread, IEnumerable<double[]> directions, double deviation)
    {
        var n = numeric.Length;
        var covariance = (double[])spread.Gaussian.Covariance.Clone();
        var any = false;
        foreach (var d in directions)
        {
            any = true;
            for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++)
                covariance[(i * n) + j] += deviation * deviation * d[numeric[i]] * d[numeric[j]];
        }
        return any ? spread with { Gaussian = new Gaussian(covariance, n) } : spread;
    }

    /// <summary>True when the class, at one of the points of its size, can bring a prediction to what was read.</summary>
    public bool CanExplain(FaultClass c, int reading, double predicted, Spread spread)
    {
        if (!c.Moves[reading])
            return false;
        var (low, high) = (c.Curve.Min(p => p[reading]), c.Curve.Max(p => p[reading]));
        var wanted = measured[reading] - predicted - spread.Shift[reading];
        return IsNear(reading, predicted + Math.Clamp(wanted, low, high), spread);
    }

    /// <summary>True when what was read is no surprise at a prediction.</summary>
    public bool IsNear(int reading, double predicted, Spread spread)
    {
        var at = Array.IndexOf(numeric, reading);
        if (at < 0)
            return overRange.IsLifted(reading, predicted);
        var slack = 3 * Math.Sqrt(spread.Gaussian.Covariance[(at * numeric.Length) + at]);
        return Math.Abs(measured[reading] - predicted - spread.Shift[reading]) < slack;
    }

    /// <summary>Log likelihood of one reading by itself, with the spread that the parameters give it; what readings share is left out.</summary>
    public double LogOfOne(int reading, double[] predicted, Spread spread)
    {
        var moves = Bench.Movements(spread.Slopes, reading);
        var variance =
            Vectors.Dot(moves, moves) + (Bench.ErrorVarianceOn(Set.SpecOf(reading).Quantity) * Set.ErrorCovariance(reading, reading));
        var centre = predicted[reading] + spread.Shift[reading];
        return Taken[reading].Outcome switch
        {
            Outcome.OverRange => overRange.LogChanceOf(reading, centre, variance),
            Outcome.Value => wrong.LogOfOne(NormalLaw.Density(measured[reading] - centre, variance)),
            // A jump speaks by its cause, not by its value.
            _ => wrong.LogOfOne(1),
        };
    }
}
