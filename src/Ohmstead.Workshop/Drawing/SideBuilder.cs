using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>Makes the lines and upright wires of one side.</summary>
internal sealed class SideBuilder
{
    private readonly List<Element> _parts;
    private readonly List<Winding> _windings;
    private readonly IReadOnlySet<string> _outer;
    private readonly IReadOnlyList<string> _toCore;
    private readonly IReadOnlyList<Core> _cores;
    private readonly DrawnNames _names;
    private readonly Dictionary<string, List<int>> _at = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _ports = new(StringComparer.Ordinal);
    private readonly HashSet<string> _forced = new(StringComparer.Ordinal);

    private List<SideNode> _nodes = [];
    private List<SideLine> _lines = [];
    private Dictionary<string, int> _nodeOf = new(StringComparer.Ordinal);
    private Dictionary<string, int> _inlineLine = new(StringComparer.Ordinal);
    private bool[] _isDrawn = [];

    private SideBuilder(
        IReadOnlyList<Element> elements,
        IReadOnlySet<string> outer,
        IReadOnlyList<string> toCore,
        IReadOnlyList<Core> cores,
        DrawnNames names
    )
    {
        _parts = [.. elements.Where(e => e is not Winding)];
        _windings = [.. elements.OfType<Winding>()];
        (_outer, _toCore, _cores, _names) = (outer, toCore, cores, names);
        for (var p = 0; p < _parts.Count; p++)
        {
            PartsAt(_parts[p].From).Add(p);
            PartsAt(_parts[p].To).Add(p);
        }
        foreach (var t in _windings.SelectMany(w => w.OtherTerminals.Append(w.From).Append(w.To)))
        {
            _ports[t] = _ports.GetValueOrDefault(t) + 1;
            PartsAt(t);
        }
        foreach (var t in toCore)
            PartsAt(t);
    }

    /// <param name="elements">Elements of this side.</param>
    /// <param name="outer">Terminals that can be reached with the case closed.</param>
    /// <param name="toCore">Terminals from which a line runs to the core, once for each leakage path.</param>
    public static SideGraph Build(
        IReadOnlyList<Element> elements,
        IReadOnlySet<string> outer,
        IReadOnlyList<string> toCore,
        IReadOnlyList<Core> cores,
        DrawnNames names
    )
    {
        var builder = new SideBuilder(elements, outer, toCore, cores, names);
        while (!builder.TryBuild()) { }
        return builder.Finish();
    }

    private List<int> PartsAt(string terminal) => _at.TryGetValue(terminal, out var list) ? list : _at[terminal] = [];

    private Item ItemOf(string terminal) => new(null, terminal, true, _names.Post(terminal));

    private int PortsAt(string terminal) => _ports.GetValueOrDefault(terminal);

    /// <summary>Things that meet at a terminal: parts, winding ports, lines to the core, and the way out to a post.</summary>
    private bool IsNode(string terminal)
    {
        if (_forced.Contains(terminal) || _toCore.Contains(terminal))
            return true;
        var (parts, ports) = (PartsAt(terminal).Count, PortsAt(terminal));
        if (ports > 1)
            return true;
        var all = parts + ports + (_outer.Contains(terminal) ? 1 : 0);
        return parts + ports > 1 && all > 2;
    }

    /// <summary>One attempt; false when a terminal had to be made an upright wire and all begins anew.</summary>
    private bool TryBuild()
    {
        (_nodes, _lines, _isDrawn) = ([], [], new bool[_parts.Count]);
        (_nodeOf, _inlineLine) = (new(StringComparer.Ordinal), new(StringComparer.Ordinal));
        foreach (var t in _at.Keys.Where(IsNode))
        {
            _nodeOf[t] = _nodes.Count;
            _nodes.Add(new(t, PortsAt(t) == 0 && !_outer.Contains(t)));
        }
        foreach (var t in _at.Keys.Where(t => EndOf(t) is not null).ToList())
        foreach (var p in PartsAt(t))
            if (!_isDrawn[p] && !TryWalk(t, p))
                return false;
        for (var p = 0; p < _parts.Count; p++)
            if (!_isDrawn[p])
                return Force(_parts[p].From);
        return true;
    }

    private bool Force(string terminal)
    {
        _forced.Add(terminal);
        return false;
    }

    /// <summary>The line end that a terminal is, or null when a line runs through it.</summary>
    private LineEnd? EndOf(string terminal)
    {
        if (_nodeOf.TryGetValue(terminal, out var node))
            return new(EndKind.Node, node);
        if (PortsAt(terminal) > 0)
            return new(EndKind.Port);
        return PartsAt(terminal).Count == 1 ? new(EndKind.Outer) : null;
    }

    /// <summary>Follows a series of elements from a terminal where a line ends.</summary>
    private bool TryWalk(string start, int part)
    {
        var items = new List<Item>();
        var (first, at) = (EndOf(start)!.Value, start);
        if (first.Kind != EndKind.Node)
            items.Add(ItemOf(start));
        while (true)
        {
            var e = _parts[part];
            _isDrawn[part] = true;
            items.Add(new(e, "", e.From == at, _names.Of(e)));
            at = e.From == at ? e.To : e.From;
            if (EndOf(at) is { } last)
            {
                if (last.Kind != EndKind.Node)
                    items.Add(ItemOf(at));
                return TryAdd(new(first, last, items, start, at));
            }
            items.Add(ItemOf(at));
            var next = PartsAt(at).FirstOrDefault(p => !_isDrawn[p], -1);
            if (next < 0)
                return Force(at);
            part = next;
        }
    }

    /// <summary>Takes a line, unless both its ends are at the same edge or the same upright wire: then it must turn round.</summary>
    private bool TryAdd(SideLine line)
    {
        var isLoop = line.First.Kind == line.Last.Kind && (line.First.Kind != EndKind.Node || line.First.Node == line.Last.Node);
        if (isLoop)
        {
            var inner = line.Items.Where(i => i.Element is null && i.Terminal != line.FirstNet && i.Terminal != line.LastNet).ToList();
            if (inner.Count > 0)
                return Force(inner[inner.Count / 2].Terminal);
            if (line.First.Kind != EndKind.Node)
                return Force(line.FirstNet);
            AddSelfLoop(line);
            return true;
        }
        if (line.Last.Kind == EndKind.Port || (line.First.Kind == EndKind.Outer && line.Last.Kind == EndKind.Node))
            line = line.Reversed();
        if (line.First.Kind == EndKind.Port)
            _inlineLine[line.FirstNet] = _lines.Count;
        _lines.Add(line);
        return true;
    }

    /// <summary>An element with both ends at one terminal: out to a second upright wire of the same terminal, and back.</summary>
    private void AddSelfLoop(SideLine line)
    {
        var far = new LineEnd(EndKind.Node, _nodes.Count);
        _nodes.Add(new(line.FirstNet, ShowsTerminal: false));
        _lines.Add(line with { Last = far });
        _lines.Add(new(line.First, far, [], line.FirstNet, line.FirstNet));
    }

    private SideGraph Finish()
    {
        foreach (var t in _nodeOf.Keys.Where(_outer.Contains))
            _lines.Add(new(new(EndKind.Node, _nodeOf[t]), new(EndKind.Outer), [ItemOf(t)], t, t));
        var shown = new HashSet<string>(StringComparer.Ordinal);
        var windings = new List<SideWinding>();
        foreach (var w in _windings)
        {
            var taps = w.Taps.OrderBy(t => t.Turn).Select(t => Port(t.To, t.Turn, t.Turn, null, shown));
            // The wire of a resistor stands below all cores.
            var core = w.IsOnCore ? Enumerable.Range(0, _cores.Count).FirstOrDefault(c => _cores[c].Id == w.Core) : _cores.Count;
            windings.Add(
                new(
                    w,
                    core,
                    [Port(w.From, 0, 0, null, shown), .. taps, Port(w.To, w.Turns, w.Turns, null, shown)],
                    [.. w.Sliders.Select(s => Port(s.To, Math.Min(s.FromTurn, s.ToTurn), Math.Max(s.FromTurn, s.ToTurn), s, shown))]
                )
            );
        }
        var coreLines = new List<int>();
        foreach (var t in _toCore)
        {
            coreLines.Add(_lines.Count);
            _lines.Add(new(new(EndKind.Port), new(EndKind.Node, _nodeOf[t]), [], t, t));
        }
        return new(_nodes, _lines, [.. windings.OrderBy(w => w.CoreIndex)], coreLines);
    }

    private WindingPort Port(string terminal, double turn, double turnTo, Slider? slider, HashSet<string> shown)
    {
        if (!_inlineLine.TryGetValue(terminal, out var line))
        {
            line = _lines.Count;
            _lines.Add(Stub(terminal, shown.Add(terminal)));
        }
        return new(terminal, turn, turnTo, slider, line);
    }

    /// <summary>A line without elements from a winding to the terminal itself.</summary>
    private SideLine Stub(string terminal, bool isFirst)
    {
        var port = new LineEnd(EndKind.Port);
        var isOuter = _outer.Contains(terminal);
        if (_nodeOf.TryGetValue(terminal, out var node))
            return new(port, new(EndKind.Node, node), isFirst && !isOuter ? [ItemOf(terminal)] : [], terminal, terminal);
        return new(port, new(isOuter ? EndKind.Outer : EndKind.Free), [ItemOf(terminal)], terminal, terminal);
    }
}
