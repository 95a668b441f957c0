namespace Ohmstead.Electrical.Diagnosis;

/// <summary>The spread of the readings of a set of faults, from the slopes of that very set.</summary>
internal sealed class SpreadModel
{
    /// <summary>A movement of a fiftieth of the meter's limit adds a thousandth to its variance.</summary>
    private const double LeastSlope = 0.02;

    private readonly Evidence evidence;
    private readonly Crew crew;
    private readonly bool[] usual;
    private readonly bool[] matters;
    private readonly double[] soundSlopes;
    private readonly double[] soundShift;

    public SpreadModel(Evidence evidence, ReadingRow[] rows, Crew crew)
    {
        (this.evidence, this.crew) = (evidence, crew);
        soundSlopes = [.. rows.SelectMany(r => r.Slopes)];
        soundShift = [.. rows.Select(r => r.Shift)];
        usual = [.. soundSlopes.Select(s => Math.Abs(s) > LeastSlope)];
        var count = evidence.Set.Model.Parameters.Length;
        matters = [.. Enumerable.Range(0, count).Select(p => rows.Any(r => Math.Abs(r.Slopes[p]) > LeastSlope))];
    }

    /// <summary>
    /// The spread around a hypothesis: of readings that its faults move, the slopes of the parameters are worked out anew;
    /// the others are as in the sound unit.
    /// </summary>
    public Spread Of(Hypothesis h)
    {
        if (h.Classes.Length == 0) return evidence.SpreadOf(soundSlopes, soundShift);
        var (n, count) = (evidence.Set.Count, evidence.Set.Model.Parameters.Length);
        var which = new bool[n * count];
        var moved = new bool[n];
        for (var r = 0; r < n; r++)
        {
            moved[r] = h.Classes.Any(c => c.Moves[r]);
            if (!moved[r]) continue;
            var rewires = h.Classes.Any(c => c.Moves[r] && !c.HasSize);
            for (var p = 0; p < count; p++) which[(r * count) + p] = usual[(r * count) + p] || (rewires && matters[p]);
        }
        var (slopes, shift) = Slopes(h.Faults(), h.Predicted, which);
        for (var r = 0; r < n; r++)
        {
            if (moved[r]) continue;
            Array.Copy(soundSlopes, r * count, slopes, r * count, count);
            shift[r] = soundShift[r];
        }
        return evidence.SpreadOf(slopes, shift);
    }

    private (double[] Slopes, double[] Shift) Slopes(Faults.Fault[] faults, double[] centre, bool[] which)
    {
        var (n, count) = (centre.Length, evidence.Set.Model.Parameters.Length);
        var slopes = new double[n * count];
        var shift = new double[n];
        var bends = Enumerable.Range(0, n).Select(_ => new double[count]).ToArray();
        // Rows are shared out, so that both threads work; each row is one reading.
        crew.Each(n, (r, worker) =>
        {
            if (!which.AsSpan(r * count, count).Contains(true)) return;
            worker.Predictor.SlopesOf(r, faults, centre[r], which.AsSpan(r * count, count), slopes.AsSpan(r * count, count), bends[r]);
            shift[r] = bends[r].Sum();
        });
        return (slopes, shift);
    }
}
