using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Observed;

/// <summary>
/// Remembers, for a unit, what each reading shows on the sound unit and with each fault alone. A unit is
/// diagnosed again after every reading, and nearly all of this stays the same. Safe for threads.
/// </summary>
public sealed class ReadingLibrary(UnitModel model)
{
    /// <summary>Below this a reading is not moved [limits of the meter's error].</summary>
    internal const double LeastMove = 0.003;

    private readonly ConcurrentDictionary<string, ReadingRow> rows = new(StringComparer.Ordinal);

    private readonly Lock filling = new();

    private readonly double[] ones = [.. Enumerable.Repeat(1.0, new FaultCatalogue(model).Modes.Length)];

    /// <summary>The unit.</summary>
    public UnitModel Model { get; } = model;

    /// <summary>The fault modes of its sheet.</summary>
    public FaultCatalogue Catalogue { get; } = new(model);

    /// <summary>
    /// The rows of a set of readings, worked out where they are not known yet. Once it is overdue, faults that are not finished
    /// are left as if they moved nothing, the least probable first; what is finished is remembered all the same.
    /// </summary>
    internal ReadingRow[] Rows(ReadingSet set, Workers workers, Func<bool> isOverdue)
    {
        var found = Enumerable
            .Range(0, set.Count)
            .Select(r => rows.GetOrAdd(KeyOf(set.SpecOf(r), set.Circuits[r].Usual.Conditions, set.Errors[r]), _ => NewRow()))
            .ToArray();
        lock (filling)
        {
            int[] unfinished = [.. Enumerable.Range(0, found.Length).DistinctBy(r => found[r]).Where(r => !found[r].IsWhole)];
            var cut = Fill(found, unfinished, workers, isOverdue);
            return cut.Length == 0 ? found : [.. found.Select(r => r.Without(cut))];
        }
    }

    private ReadingRow NewRow() => new(Model.Parameters.Length, Catalogue.Modes.Length);

    /// <summary>Works out what the rows of some readings lack; gives the modes that it did not come to.</summary>
    private int[] Fill(ReadingRow[] found, int[] readings, Workers workers, Func<bool> isOverdue)
    {
        workers.Each(
            readings.Length,
            (n, worker) =>
            {
                var row = found[readings[n]];
                if (!double.IsNaN(row.Sound))
                    return;
                row.Sound = worker.Predictor.OfSound(readings[n]);
            }
        );
        // Pieces of one reading and a few modes keep all threads busy to the end; the likelier faults come first.
        const int modesAtOnce = 16;
        var odds = Catalogue.Odds(null);
        var chunks = Catalogue.Modes.OrderByDescending(m => odds[m.Number]).ThenBy(m => m.Number).Chunk(modesAtOnce).ToArray();
        var isCut = new bool[chunks.Length];
        workers.Each(
            readings.Length * (chunks.Length + 1),
            (piece, worker) =>
            {
                var (chunk, n) = ((piece / readings.Length) - 1, piece % readings.Length);
                var row = found[readings[n]];
                if (chunk < 0)
                    FillSlopes(row, readings[n], worker);
                else
                    foreach (var mode in chunks[chunk].Where(m => !row.IsKnown[m.Number]))
                    {
                        if (isCut[chunk] |= isOverdue())
                            break;
                        row.Curves[mode.Number] = CurveOf(Alone(mode), readings[n], row.Sound, worker);
                        row.IsKnown[mode.Number] = true;
                    }
            }
        );
        return [.. chunks.Where((_, n) => isCut[n]).SelectMany(c => c).Select(m => m.Number)];
    }

    private FaultClass Alone(FaultMode mode) => new(0, [mode], ones, Catalogue.ElementOf);

    private void FillSlopes(ReadingRow row, int reading, Worker worker)
    {
        if (!double.IsNaN(row.Shift))
            return;
        var all = new bool[Model.Parameters.Length];
        Array.Fill(all, true);
        var bends = new double[all.Length];
        worker.Predictor.SlopesOf(reading, [], row.Sound, all, row.Slopes, bends);
        row.Shift = bends.Sum();
    }

    /// <summary>The displacement of a reading at the points of a class's size; null when the ends and the middle move nothing.</summary>
    internal static double[]? CurveOf(FaultClass c, int reading, double sound, Worker worker)
    {
        var curve = new double[c.PointShares.Length];
        var last = curve.Length - 1;
        var moves = false;
        // Where a size cannot be solved the fault says nothing of this reading: as if it moved nothing.
        foreach (var k in (ReadOnlySpan<int>)[0, last / 2, last])
        {
            if (Point(c, k, reading, sound, worker) is not { } by)
                return null;
            moves |= Math.Abs(curve[k] = by) > LeastMove;
        }
        if (!moves)
            return null;
        for (var k = 1; k < last; k++)
            if (k != last / 2)
            {
                if (Point(c, k, reading, sound, worker) is not { } by)
                    return null;
                curve[k] = by;
            }
        return curve;
    }

    private static double? Point(FaultClass c, int k, int reading, double sound, Worker worker)
    {
        using var unit = worker.Predictor.Assume(c.At(c.PointShares[k]));
        return unit.Scaled(reading) - sound;
    }

    private static string KeyOf(ReadingSpec spec, ReadingState state, MeterError error)
    {
        var key = new StringBuilder(spec.Id);
        void Add(double v) => key.Append('|').Append(v.ToString("R", CultureInfo.InvariantCulture));
        // Rows stand on the meter's scale.
        Add(error.Percent);
        Add(error.Floor);
        Add(error.LeadOhms);
        Add(error.IsAveraging ? 1 : 0);
        if (state.Source is { } s)
            Add(s.Volts);
        Add(state.Celsius);
        foreach (var (id, p) in state.Controls.OrderBy(c => c.Key, StringComparer.Ordinal))
        {
            key.Append('|').Append(id).Append('=').Append(p.Selector);
            Add(p.Throttle);
        }
        foreach (var l in state.Loads)
        {
            key.Append('|').Append(l.From).Append('~').Append(l.To);
            Add(l.Ohms);
            Add(l.Henries);
        }
        return key.ToString();
    }
}
