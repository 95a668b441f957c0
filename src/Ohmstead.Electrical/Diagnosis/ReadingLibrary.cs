using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// Remembers, for a unit and a meter, what each reading shows on the sound unit and with each fault alone. A unit is
/// diagnosed again after every reading, and nearly all of this stays the same. Safe for threads.
/// </summary>
public sealed class ReadingLibrary(UnitModel model, Meter meter)
{
    /// <summary>Below this a reading is not moved [limits of the meter's error].</summary>
    internal const double LeastMove = 0.003;

    private readonly ConcurrentDictionary<string, ReadingRow> rows = new(StringComparer.Ordinal);

    /// <summary>The unit.</summary>
    public UnitModel Model { get; } = model;

    /// <summary>The fault modes of its sheet.</summary>
    public FaultCatalogue Catalogue { get; } = new(model);

    /// <summary>The meter.</summary>
    public Meter Meter { get; } = meter;

    /// <summary>The rows of a set of readings, worked out where they are not known yet.</summary>
    internal ReadingRow[] Rows(ReadingSet set, Crew crew)
    {
        var keys = Enumerable.Range(0, set.Count).Select(r => KeyOf(set.SpecOf(r), set.Circuits[r].Usual.Conditions)).ToArray();
        var missing = Enumerable.Range(0, keys.Length).Where(r => !rows.ContainsKey(keys[r])).DistinctBy(r => keys[r]).ToArray();
        // Pieces of one reading and a few modes keep both threads busy to the end.
        const int modesAtOnce = 16;
        var chunks = ((Catalogue.Modes.Length + modesAtOnce - 1) / modesAtOnce) + 1;
        var sound = new double[missing.Length];
        crew.Each(missing.Length, (m, worker) =>
        {
            worker.Predictor.Begin([]);
            sound[m] = worker.Predictor.Scaled(missing[m], []);
        });
        var curves = missing.Select(_ => new double[]?[Catalogue.Modes.Length]).ToArray();
        var slopes = missing.Select(_ => new double[Model.Parameters.Length]).ToArray();
        var shifts = new double[missing.Length];
        crew.Each(missing.Length * chunks, (piece, worker) =>
        {
            var (m, chunk) = (piece / chunks, piece % chunks);
            if (chunk == 0)
            {
                var all = new bool[Model.Parameters.Length];
                Array.Fill(all, true);
                var bends = new double[all.Length];
                worker.Predictor.SlopesOf(missing[m], [], sound[m], all, slopes[m], bends);
                shifts[m] = bends.Sum();
                return;
            }
            for (var n = (chunk - 1) * modesAtOnce; n < Math.Min(chunk * modesAtOnce, Catalogue.Modes.Length); n++)
                curves[m][n] = CurveOf(new FaultClass(0, [Catalogue.Modes[n]], [.. Catalogue.Modes.Select(_ => 1.0)], Catalogue.ElementOf), missing[m], sound[m], worker);
        });
        for (var m = 0; m < missing.Length; m++) rows[keys[missing[m]]] = new ReadingRow(sound[m], slopes[m], shifts[m], curves[m]);
        return [.. keys.Select(k => rows[k])];
    }

    /// <summary>The displacement of a reading at the points of a class's size; null when the ends and the middle move nothing.</summary>
    internal static double[]? CurveOf(FaultClass c, int reading, double sound, Worker worker)
    {
        var curve = new double[c.PointShares.Length];
        var last = curve.Length - 1;
        var moves = false;
        foreach (var k in (ReadOnlySpan<int>)[0, last / 2, last]) moves |= Math.Abs(curve[k] = Point(c, k, reading, sound, worker)) > LeastMove;
        if (!moves) return null;
        for (var k = 1; k < last; k++)
            if (k != last / 2) curve[k] = Point(c, k, reading, sound, worker);
        return curve;
    }

    private static double Point(FaultClass c, int k, int reading, double sound, Worker worker)
    {
        ReadOnlySpan<Fault> faults = [c.At(c.PointShares[k])];
        worker.Predictor.Begin(faults);
        return worker.Predictor.Scaled(reading, faults) - sound;
    }

    private static string KeyOf(ReadingSpec spec, ReadingState state)
    {
        var key = new StringBuilder(spec.Id);
        void Add(double v) => key.Append('|').Append(v.ToString("R", CultureInfo.InvariantCulture));
        if (state.Source is { } s) Add(s.Volts);
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
