using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Readings;

/// <summary>Predicts readings of a faulted unit on the meter's scale. Scratch of one thread.</summary>
/// <param name="set">The readings.</param>
/// <param name="waves">Where solutions are kept for whoever asks for the same unit again; null where nobody does.</param>
internal sealed class Predictor(ReadingSet set, SolvedWaves? waves = null)
{
    /// <summary>Parameters whose spread is at most this are differentiated on one side; wider ones across ± one deviation.</summary>
    private const double NarrowSigma = 0.15;

    /// <summary>The step for narrow parameters, in standard deviations.</summary>
    private const double NarrowStep = 0.1;

    /// <summary>A reading in which a rectifier conducts is solved as a wave: it costs about this many plain ones (docs/performance.md).</summary>
    private const int WorkOfWave = 10;

    private readonly ReadingSolver solver = new();
    private readonly Stack<UnitValues> idle = [];
    private readonly PeriodicStart?[] starts = new PeriodicStart?[set.Count];
    private readonly bool[] isStarted = new bool[set.Count];
    private UnitValues? lastValues;
    private int lastGroup = -1;

    /// <summary>What is predicted.</summary>
    public ReadingSet Set => set;

    /// <summary>Readings solved so far.</summary>
    public long Solved { get; private set; }

    /// <summary>What they cost, in readings without a rectifier.</summary>
    public long Work { get; private set; }

    /// <summary>The nominal unit with some faults.</summary>
    public AssumedUnit Assume(params Fault[] faults) => With(Nominal(), faults);

    /// <summary>The unit with every parameter multiplied by its own factor, then the faults.</summary>
    public AssumedUnit Assume(Fault[] faults, ReadOnlySpan<double> factors)
    {
        var values = Nominal();
        for (var p = 0; p < factors.Length; p++)
            values.Scale(set.Model.Parameters[p], factors[p]);
        return With(values, faults);
    }

    private AssumedUnit Assume(Fault[] faults, Parameter parameter, double factor)
    {
        var values = Nominal();
        values.Scale(parameter, factor);
        return With(values, faults);
    }

    private AssumedUnit With(UnitValues values, Fault[] faults)
    {
        foreach (var f in faults)
            f.ApplyTo(values);
        return new(this, values, faults);
    }

    private UnitValues Nominal()
    {
        if (!idle.TryPop(out var values))
            return set.Model.Nominal.Copy();
        values.CopyFrom(set.Model.Nominal);
        return values;
    }

    /// <summary>Numbers that no unit holds any more.</summary>
    internal void TakeBack(UnitValues values)
    {
        lastValues = null;
        idle.Push(values);
    }

    /// <summary>
    /// A reading of an assumed unit, in its quantity's unit; null where it could not be solved. Readings of one circuit that are asked
    /// one after another are read off one solution; each counts as solved all the same, so that work hangs on no order.
    /// </summary>
    internal double? Solve(int reading, UnitValues values, ReadOnlySpan<Fault> faults)
    {
        Solved++;
        var (circuit, group, isAveraging) = (set.Circuits[reading].For(faults), set.GroupOf(reading), set.Errors[reading].IsAveraging);
        var isKept = waves is not null && !circuit.IsDirect && !circuit.Junctions.IsEmpty;
        var key = isKept ? SolvedWaves.KeyOf(reading, circuit, values) : default;
        if (isKept && waves!.Find(key) is { } known)
        {
            Work += WorkOfWave;
            return Shown(known);
        }
        var solved =
            ReferenceEquals(values, lastValues) && group == lastGroup
                ? solver.Read(circuit, isAveraging)
                : solver.Solve(circuit, values, isAveraging, StartOf(group, circuit));
        (lastValues, lastGroup) = circuit.IsDirect ? (null, -1) : (values, group);
        Work += solved.IsPeriodic ? WorkOfWave : 1;
        if (isKept && solved.IsPeriodic)
            waves!.Keep(key, solved);
        return Shown(solved);
    }

    private static double? Shown(Solution solved) =>
        solved.Value is not { } value ? null
        : double.IsFinite(value) ? Math.Clamp(value, -Solution.NoPathOhms, Solution.NoPathOhms)
        : Solution.NoPathOhms;

    /// <summary>
    /// The sound unit's waves, from which every unit's are found: they hang on the circuit alone, and not on what was predicted before.
    /// </summary>
    private PeriodicStart? StartOf(int group, ReadingCircuit circuit)
    {
        var usual = set.Circuits[group].Usual;
        if (circuit.IsDirect || circuit.Elimination != usual.Elimination)
            return null;
        if (!isStarted[group])
        {
            isStarted[group] = true;
            var solved = solver.Solve(usual, set.Model.Nominal);
            if (solved.IsPeriodic && solved.Value is not null)
                solver.Keep(starts[group] = new PeriodicStart());
        }
        return starts[group];
    }

    /// <summary>A reading of the nominal sound unit on the meter's scale. Only for one that can be judged (<see cref="Judging"/>): it is solved there.</summary>
    public double OfSound(int reading)
    {
        using var sound = Assume();
        return sound.Scaled(reading) ?? throw new InvalidOperationException($"{set.SpecOf(reading).Id} cannot be judged.");
    }

    /// <summary>
    /// How far a reading moves on the meter's scale for one standard deviation z of each parameter: slope·z + bend·z². Wide parameters are differenced across ± one deviation, so that the variance holds where the
    /// response bends; narrow ones by a small step. Where a parameter's reading cannot be solved it counts as not moved by it.
    /// </summary>
    /// <param name="centre">The reading with every parameter at its nominal value.</param>
    /// <param name="which">The parameters to work out; the others stay 0.</param>
    public void SlopesOf(int reading, Fault[] faults, double centre, ReadOnlySpan<bool> which, Span<double> slopes, Span<double> bends)
    {
        var parameters = set.Model.Parameters;
        for (var p = 0; p < parameters.Length; p++)
        {
            if (!which[p])
                continue;
            var sigma = parameters[p].Sigma;
            if (sigma <= NarrowSigma)
            {
                if (At(reading, faults, parameters[p], Math.Exp(NarrowStep * sigma)) is { } near)
                    slopes[p] = (near - centre) / NarrowStep;
                continue;
            }
            if (
                At(reading, faults, parameters[p], Math.Exp(sigma)) is not { } up
                || At(reading, faults, parameters[p], Math.Exp(-sigma)) is not { } down
            )
                continue;
            slopes[p] = (up - centre - (down - centre)) / 2;
            bends[p] = (up - centre + (down - centre)) / 2;
        }
    }

    /// <summary>
    /// As <see cref="SlopesOf"/>, about other values of the parameters: each by a factor, and differenced across ± its own step.
    /// </summary>
    /// <param name="factors">By parameter; scratch, left as it was.</param>
    /// <param name="steps">By parameter, in standard deviations; the bend is that of one step.</param>
    public void SlopesAbout(
        int reading,
        Fault[] faults,
        double centre,
        double[] factors,
        double[] steps,
        ReadOnlySpan<bool> which,
        Span<double> slopes,
        Span<double> bends
    )
    {
        var parameters = set.Model.Parameters;
        for (var p = 0; p < parameters.Length; p++)
        {
            if (!which[p])
                continue;
            var (about, by) = (factors[p], Math.Exp(parameters[p].Sigma * steps[p]));
            var (above, below) = (At(reading, faults, factors, p, about * by), At(reading, faults, factors, p, about / by));
            factors[p] = about;
            if (above is not { } up || below is not { } down)
                continue;
            slopes[p] = (up - centre - (down - centre)) / (2 * steps[p]);
            bends[p] = (up - centre + (down - centre)) / 2;
        }
    }

    private double? At(int reading, Fault[] faults, double[] factors, int parameter, double factor)
    {
        factors[parameter] = factor;
        using var unit = Assume(faults, factors);
        return unit.Scaled(reading);
    }

    private double? At(int reading, Fault[] faults, Parameter parameter, double factor)
    {
        using var unit = Assume(faults, parameter, factor);
        return unit.Scaled(reading);
    }
}
