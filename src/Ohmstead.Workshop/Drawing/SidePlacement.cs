namespace Ohmstead.Workshop.Drawing;

/// <summary>Turns the grid of a side into measures: columns wide enough for names, rows far enough apart.</summary>
internal sealed class SidePlacement
{
    private const double BarGap = 26;

    private readonly SideGraph _graph;
    private readonly SideState _state;
    private readonly SideLine[] _lines;
    private readonly string[][] _sliders;
    private readonly DrawnNames _names;
    private readonly int[] _top;
    private readonly int[] _bottom;
    private readonly int[] _byColumn;
    private readonly int[] _label;
    private readonly List<(int From, int To, double Distance)> _constraints = [];
    private readonly (int Start, int End, Packed Packed)[] _windows;
    private readonly int[] _stretch;

    private SidePlacement(SideState state, DrawnNames names)
    {
        (_graph, _state, _names) = (state.Graph, state, names);
        _lines = [.. _graph.Lines.Select(l => state.ColumnOf(l.First) <= state.ColumnOf(l.Last) ? l : l.Reversed())];
        _sliders = [.. _lines.Select(_ => Array.Empty<string>())];
        foreach (var p in _graph.Windings.SelectMany(w => w.Sliders))
            _sliders[p.Line] = names.Lines(p.Slider!.Id) is { Length: > 0 } lines ? lines : [""];
        _top = [.. _graph.Nodes.Select(_ => int.MaxValue)];
        _bottom = [.. _graph.Nodes.Select(_ => int.MinValue)];
        for (var e = 0; e < _lines.Length; e++)
            foreach (var v in new[] { _lines[e].First.Node, _lines[e].Last.Node }.Where(v => v >= 0))
                (_top[v], _bottom[v]) = (Math.Min(_top[v], state.Rows[e]), Math.Max(_bottom[v], state.Rows[e]));
        _byColumn = [.. Enumerable.Range(0, _graph.Nodes.Count).OrderBy(v => state.Columns[v])];
        _label = [.. Enumerable.Range(0, _graph.Nodes.Count).Select(LabelOf)];
        _windows = new (int, int, Packed)[_lines.Length];
        _stretch = new int[_lines.Length];
    }

    private int Outer => _graph.Nodes.Count;

    private const int Port = -1;

    public static PlacedSide Of(SideState state, DrawnNames names)
    {
        var placement = new SidePlacement(state, names);
        placement.ChooseStretches();
        return placement.Place();
    }

    /// <summary>Of the stretches into which others cut a line, its items stand in the one that makes the side narrowest.</summary>
    private void ChooseStretches()
    {
        Constrain();
        for (var e = 0; e < _lines.Length; e++)
        {
            var count = Stops(e).Count - 1;
            if (count < 2 || _lines[e].Last.Kind == EndKind.Free)
                continue;
            var (best, bestWidth) = (0, double.MaxValue);
            for (var n = 0; n < count; n++)
            {
                _stretch[e] = n;
                Constrain();
                var near = Near();
                if (near[Outer] + (near.Sum() / 1000) is var width && width < bestWidth)
                    (best, bestWidth) = (n, width);
            }
            _stretch[e] = best;
        }
        Constrain();
    }

    private List<int> Stops(int e) => [IndexOf(_lines[e].First), .. _byColumn.Where(v => Crosses(v, e)), IndexOf(_lines[e].Last)];

    /// <summary>The line at whose height the terminal of an upright wire stands: best one that goes straight on.</summary>
    private int LabelOf(int node)
    {
        var outward = Enumerable.Range(0, _lines.Length).Where(e => _lines[e].First.Node == node).ToList();
        var inward = Enumerable.Range(0, _lines.Length).Where(e => _lines[e].Last.Node == node).ToList();
        if (outward.Count == 0)
            return inward[0];
        return outward.FirstOrDefault(e => inward.Any(f => _state.Rows[f] == _state.Rows[e]), outward[0]);
    }

    private void Constrain()
    {
        _constraints.Clear();
        foreach (var v in _byColumn)
        {
            _constraints.Add((Port, v, LinePacking.FirstBar));
            _constraints.Add((v, Outer, BarGap));
            foreach (var u in _byColumn.TakeWhile(u => u != v))
                if (_top[u] <= _bottom[v] && _top[v] <= _bottom[u])
                    _constraints.Add((u, v, BarGap));
        }
        for (var e = 0; e < _lines.Length; e++)
            ConstrainLine(e);
    }

    /// <summary>Where other upright wires cross a line, its items stand together in one stretch between two of them.</summary>
    private void ConstrainLine(int e)
    {
        var line = _lines[e];
        var (first, last) = (IndexOf(line.First), IndexOf(line.Last));
        if (line.Last.Kind == EndKind.Free)
        {
            _windows[e] = (Port, Port, LinePacking.Pack(line, true, _sliders[e]));
            return;
        }
        var stops = Stops(e);
        for (var n = 0; n + 1 < stops.Count; n++)
        {
            var isFirst = n == 0;
            var distance = BarGap;
            if (n == _stretch[e])
            {
                var packed = LinePacking.Pack(line, isFirst && first == Port, isFirst ? _sliders[e] : []);
                _windows[e] = (stops[n], stops[n + 1], packed);
                distance = packed.Length;
            }
            else if (isFirst && first == Port && LinePacking.PortItem(line) is not null)
                distance = LinePacking.PortRight + 8;
            _constraints.Add((stops[n], stops[n + 1], distance));
        }
    }

    private bool Crosses(int v, int e)
    {
        var (row, column) = (_state.Rows[e], _state.Columns[v]);
        return _top[v] < row && row < _bottom[v] && _state.ColumnOf(_lines[e].First) < column && column < _state.ColumnOf(_lines[e].Last);
    }

    private int IndexOf(LineEnd end) =>
        end.Kind switch
        {
            EndKind.Node => end.Node,
            EndKind.Outer => Outer,
            _ => Port,
        };

    /// <summary>Each upright wire half way between as near to the windings and as near to the edge as it can stand.</summary>
    private double[] Columns()
    {
        var near = Near();
        var far = new double[Outer + 1];
        Array.Fill(far, near[Outer]);
        foreach (var v in _byColumn.Reverse())
        foreach (var c in _constraints.Where(c => c.From == v))
            far[v] = Math.Min(far[v], far[c.To] - c.Distance);
        return [.. near.Zip(far, (n, f) => Math.Round((n + f) / 2))];
    }

    /// <summary>Each upright wire as near to the windings as it can stand.</summary>
    private double[] Near()
    {
        var near = new double[Outer + 1];
        near[Outer] = LinePacking.FirstBar;
        foreach (var v in _byColumn.Append(Outer))
        foreach (var c in _constraints)
            if (c.To == v)
                near[v] = Math.Max(near[v], (c.From == Port ? 0 : near[c.From]) + c.Distance);
        return near;
    }

    private PlacedSide Place()
    {
        var columns = Columns();
        double U(int index) => index == Port ? 0 : columns[index];
        var placed = new PlacedLine[_lines.Length];
        for (var e = 0; e < _lines.Length; e++)
        {
            var line = _lines[e];
            var (start, end, packed) = _windows[e];
            var toU = line.Last.Kind == EndKind.Free ? LinePacking.PortTerminal : U(IndexOf(line.Last));
            var slack = line.Last.Kind == EndKind.Free ? 0 : U(end) - U(start) - packed.Length;
            var items = new List<PlacedItem>();
            if (LinePacking.PortItem(line) is { } port)
                items.Add(new(port, LinePacking.PortTerminal));
            for (var n = 0; n < packed.Items.Count; n++)
                items.Add(new(packed.Items[n], Math.Round(U(start) + packed.Offsets[n] + (slack * (n + 1) / (packed.Items.Count + 1)))));
            if (LinePacking.EndItem(line) is { } last)
                items.Add(new(last, toU));
            placed[e] = new(line, _graph.CoreLines.Contains(e), 0, U(IndexOf(line.First)), toU, items);
        }
        var (rows, labels) = new RowHeights(_state, placed, _sliders, _label, _names).Compute();
        for (var e = 0; e < placed.Length; e++)
            placed[e] = placed[e] with { Y = rows[_state.Rows[e]] };
        return new(placed, [.. Enumerable.Range(0, Outer).Select(v => Node(v, columns[v], rows))], Windings(rows, labels), columns[Outer]);
    }

    private PlacedNode Node(int v, double u, double[] rows) =>
        new(_graph.Nodes[v], u, rows[_top[v]], rows[_bottom[v]], rows[_state.Rows[_label[v]]]);

    private List<PlacedWinding> Windings(double[] rows, double[] labels) =>
        [
            .. _state.Stack.Select(w => new PlacedWinding(
                _graph.Windings[w],
                [.. _state.PortsDown(w).Select(p => (p, rows[_state.Rows[p.Line]]))],
                labels[w]
            )),
        ];
}
