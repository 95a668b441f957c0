using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawing;

/// <summary>Finds the path of least ohms between two terminals, and what lies beside it.</summary>
internal sealed class PathSearch
{
    /// <summary>Between paths of equal ohms the one with fewer parts is taken.</summary>
    private const double Each = 1e-6;

    /// <summary>What a rectifier counts while it conducts [Ω]: some volts less at some amps.</summary>
    private const double RectifierOhms = 1;

    /// <summary>What a slider that touches nothing, and what else lets nothing through, counts [Ω].</summary>
    private const double OpenOhms = 1e7;

    private readonly List<Joint> _joints = [];
    private readonly Dictionary<string, List<int>> _at = new(StringComparer.Ordinal);

    /// <summary>Something between two places: terminals, or turns of a winding at which a slider stands.</summary>
    private readonly record struct Joint(string Id, ElementKind? Kind, string A, string B, double Ohms, bool IsOpen);

    private PathSearch(TypeSheet sheet, ReadingState state)
    {
        foreach (var e in sheet.Elements.Where(e => !state.Lifted.Contains(e.Id)))
            if (e is Winding w)
                Add(w, state);
            else
            {
                var isOpen = PartKind.Of(e.Kind).IsOpen || !MeasuredPath.IsClosed(sheet, e, state.Controls);
                Add(new(e.Id, e.Kind, e.From, e.To, OhmsOf(e, isOpen), isOpen));
            }
        foreach (var clip in state.Joined)
        foreach (var other in clip.Skip(1))
            Add(new("", null, clip[0], other, 0, false));
    }

    public static MeasuredPath? Run(TypeSheet sheet, ReadingState state, string first, string second)
    {
        var search = new PathSearch(sheet, state);
        var way = search.Least(first, second);
        if (way is null)
            return null;
        var terminals = sheet.Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To)).ToHashSet(StringComparer.Ordinal);
        var parts = new List<PathPart>();
        foreach (var (joint, from, to) in way)
        {
            var (a, b) = (terminals.Contains(from) ? from : "", terminals.Contains(to) ? to : "");
            // The turns of one winding from stop to stop are one part.
            if (parts.Count > 0 && joint.Kind is ElementKind.Winding or ElementKind.Resistor && parts[^1].Id == joint.Id)
                parts[^1] = parts[^1] with { To = b };
            else
                parts.Add(new(joint.Id, joint.Kind, a, b, joint.IsOpen));
        }
        var on = parts.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        return new(first, second, [.. parts], [.. PathBlock.Of(search.Conducting, first, second).Where(id => !on.Contains(id))]);
    }

    private IReadOnlyList<(string Id, string A, string B)> Conducting => [.. _joints.Where(j => !j.IsOpen).Select(j => (j.Id, j.A, j.B))];

    private void Add(Joint joint)
    {
        foreach (var end in new[] { joint.A, joint.B })
        {
            if (!_at.TryGetValue(end, out var list))
                _at[end] = list = [];
            list.Add(_joints.Count);
        }
        _joints.Add(joint);
    }

    private void Add(Winding w, ReadingState state)
    {
        var stops = w
            .Taps.Select(t => (t.Turn, Place: t.To))
            .Append((Turn: 0, Place: w.From))
            .Append((Turn: w.Turns, Place: w.To))
            .Concat(w.Sliders.Select(s => (Turn: TurnOf(s, state), Place: PlaceOf(w, s))))
            .OrderBy(s => s.Turn)
            .ToList();
        for (var n = 0; n + 1 < stops.Count; n++)
        {
            var turns = stops[n + 1].Turn - stops[n].Turn;
            Add(new(w.Id, w.Kind, stops[n].Place, stops[n + 1].Place, w.Ohms * turns / w.Turns, false));
        }
        foreach (var s in w.Sliders)
            Add(new(s.Id, ElementKind.Slider, PlaceOf(w, s), s.To, IsOff(s, state) ? OpenOhms : s.ContactOhms, IsOff(s, state)));
    }

    private static double TurnOf(Slider s, ReadingState state) => s.FromTurn + (PositionOf(s, state) * (s.ToTurn - s.FromTurn));

    private static bool IsOff(Slider s, ReadingState state) => s.IsOff(PositionOf(s, state));

    private static double PositionOf(Slider s, ReadingState state) => state.Controls.TryGetValue(s.Control, out var p) ? p.Throttle : 0;

    /// <summary>No terminal has a blank in its id.</summary>
    private static string PlaceOf(Winding w, Slider s) => string.Create(CultureInfo.InvariantCulture, $"{w.Id} at {s.Id}");

    private static double OhmsOf(Element e, bool isOpen) =>
        e switch
        {
            Resistive r => r.Ohms,
            Lamp l => l.Volts / l.Amps,
            Rectifier r => r.SeriesOhms + RectifierOhms,
            Switch s => isOpen ? s.OpenOhms : s.Ohms,
            _ => isOpen ? OpenOhms : 0,
        };

    /// <summary>The joints from one place to the other, each with the ends at which it is entered and left.</summary>
    private List<(Joint Joint, string From, string To)>? Least(string first, string second)
    {
        var best = new Dictionary<string, (double Ohms, int By, string From)>(StringComparer.Ordinal) { [first] = (0, -1, "") };
        var open = new PriorityQueue<string, (double, int)>();
        open.Enqueue(first, (0, 0));
        var done = new HashSet<string>(StringComparer.Ordinal);
        while (open.TryDequeue(out var at, out _) && at != second)
        {
            if (!done.Add(at) || !_at.TryGetValue(at, out var joints))
                continue;
            foreach (var n in joints)
            {
                var to = _joints[n].A == at ? _joints[n].B : _joints[n].A;
                var ohms = best[at].Ohms + _joints[n].Ohms + Each;
                if (best.TryGetValue(to, out var had) && had.Ohms <= ohms)
                    continue;
                best[to] = (ohms, n, at);
                open.Enqueue(to, (ohms, n));
            }
        }
        if (!best.ContainsKey(second))
            return null;
        var way = new List<(Joint, string, string)>();
        for (var at = second; best[at].By >= 0; at = best[at].From)
            way.Add((_joints[best[at].By], best[at].From, at));
        way.Reverse();
        return way;
    }
}
