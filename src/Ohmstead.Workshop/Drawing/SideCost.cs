namespace Ohmstead.Workshop.Drawing;

/// <summary>How far a layout on the grid is from a good one: crossings first, then bends, then size.</summary>
internal sealed class SideCost
{
    private const double PerCrossing = 100;
    private const double PerClash = 400;
    private const double PerBarRow = 3;
    private const double PerRow = 3;
    private const double PerColumn = 0.25;
    private const double PerWidth = 0.03;
    private const double PerWindingRow = 0.7;
    private const double PerBridgeCrossing = 25;
    private const double PerTwinRow = 3;
    private const double PerTwinColumn = 2;

    private readonly SideGraph _graph;
    private readonly double[] _widths;
    private readonly IReadOnlySet<(int Winding, bool IsFrom)> _ironEnds;
    private readonly IReadOnlySet<(int Winding, bool IsFrom)> _acrossEnds;
    private readonly int[] _left;
    private readonly int[] _right;
    private readonly int[] _top;
    private readonly int[] _bottom;
    private readonly double[] _reach;
    private readonly int[] _nodeAt;
    private readonly int[][] _linesAt;
    private readonly int[] _outerLines;
    private readonly SideTwins _twins;
    private readonly ulong[] _taken;
    private readonly int _words;

    /// <param name="ironEnds">Winding ends from which a leakage path leads to the iron, drawn above.</param>
    /// <param name="acrossEnds">Winding ends from which a leakage path leads across, drawn below.</param>
    public SideCost(
        SideGraph graph,
        SideTwins twins,
        IReadOnlySet<(int Winding, bool IsFrom)> ironEnds,
        IReadOnlySet<(int Winding, bool IsFrom)> acrossEnds
    )
    {
        (_graph, _ironEnds, _acrossEnds) = (graph, ironEnds, acrossEnds);
        _widths = [.. graph.Lines.Select(l => LinePacking.LeastLength(l))];
        (_left, _right) = (new int[graph.Lines.Count], new int[graph.Lines.Count]);
        (_top, _bottom) = (new int[graph.Nodes.Count], new int[graph.Nodes.Count]);
        _reach = new double[graph.Nodes.Count + 3];
        _nodeAt = new int[graph.Nodes.Count + 2];
        var all = Enumerable.Range(0, graph.Lines.Count).ToArray();
        _linesAt =
        [
            .. Enumerable
                .Range(0, graph.Nodes.Count)
                .Select(v => all.Where(e => graph.Lines[e].First.Node == v || graph.Lines[e].Last.Node == v).ToArray()),
        ];
        _twins = twins;
        _words = (graph.Nodes.Count + 3 + 63) / 64;
        _taken = new ulong[_words * ((2 * graph.Lines.Count) + 2)];
        _outerLines = [.. all.Where(e => graph.Lines[e].Last.Kind == EndKind.Outer)];
    }

    public double Of(SideState s)
    {
        Measure(s);
        var cost = 0.0;
        var rows = 0;
        for (var v = 0; v < _top.Length; v++)
            cost += PerBarRow * Math.Max(0, _bottom[v] - _top[v]);
        for (var e = 0; e < _left.Length; e++)
        {
            var (row, left, right) = (s.Rows[e], _left[e], _right[e]);
            rows = Math.Max(rows, row);
            cost += PerColumn * (right - left);
            for (var c = Math.Max(2, left + 1); c < right && c < _nodeAt.Length; c++)
            {
                var v = _nodeAt[c];
                if (_top[v] < row && row < _bottom[v])
                    cost += PerCrossing;
            }
            if (IsTaken(row, left, right))
                cost += PerClash;
        }
        return cost + (PerRow * rows) + (PerWidth * Width()) + WindingCost(s) + TwinCost(s);
    }

    /// <summary>Takes a stretch of a row; true when part of it was taken before.</summary>
    private bool IsTaken(int row, int left, int right)
    {
        if (_words == 1)
        {
            var all = ((1ul << right) - 1) & ~((1ul << left) - 1);
            var had = (_taken[row] & all) != 0;
            _taken[row] |= all;
            return had;
        }
        var clashes = false;
        for (var c = left; c < right; c++)
        {
            ref var word = ref _taken[(row * _words) + (c >> 6)];
            var bit = 1ul << (c & 63);
            clashes |= (word & bit) != 0;
            word |= bit;
        }
        return clashes;
    }

    /// <summary>Twins should stand mirrored, the two as far above a middle as below, at the same distance from the windings.</summary>
    private double TwinCost(SideState s)
    {
        if (_twins.Lines.Count == 0)
            return 0;
        var (sum, cost) = (0.0, 0.0);
        foreach (var (a, b) in _twins.Lines)
            sum += s.Rows[a] + s.Rows[b];
        var mean = sum / _twins.Lines.Count;
        foreach (var (a, b) in _twins.Lines)
            cost += PerTwinRow * Math.Abs(s.Rows[a] + s.Rows[b] - mean);
        foreach (var (a, b) in _twins.Nodes)
            cost += PerTwinColumn * (Math.Abs(s.Columns[a] - s.Columns[b]) - 1);
        return cost;
    }

    private void Measure(SideState s)
    {
        Array.Clear(_taken, 0, _words * (_left.Length + 1));
        Array.Fill(_top, int.MaxValue);
        Array.Fill(_bottom, int.MinValue);
        for (var v = 0; v < _top.Length; v++)
            _nodeAt[s.Columns[v]] = v;
        for (var e = 0; e < _left.Length; e++)
        {
            var line = _graph.Lines[e];
            var (a, b) = (s.ColumnOf(line.First), s.ColumnOf(line.Last));
            (_left[e], _right[e]) = (Math.Min(a, b), Math.Max(a, b));
            if (line.First.Node >= 0)
                Stretch(line.First.Node, s.Rows[e]);
            if (line.Last.Node >= 0)
                Stretch(line.Last.Node, s.Rows[e]);
        }
    }

    private void Stretch(int node, int row)
    {
        if (row < _top[node])
            _top[node] = row;
        if (row > _bottom[node])
            _bottom[node] = row;
    }

    /// <summary>The longest series of lines from the windings to the edge.</summary>
    private double Width()
    {
        Array.Fill(_reach, LinePacking.FirstBar);
        _reach[0] = 0;
        for (var c = 2; c < _reach.Length; c++)
            foreach (var e in c == _reach.Length - 1 ? _outerLines : _linesAt[_nodeAt[c]])
                if (_right[e] == c)
                    _reach[c] = Math.Max(_reach[c], _reach[_left[e]] + _widths[e]);
        return _reach[^1];
    }

    private double WindingCost(SideState s)
    {
        var cost = 0.0;
        foreach (var w in s.Stack)
        {
            var ends = _graph.Windings[w].Fixed;
            cost += PerWindingRow * Math.Abs(s.Rows[ends[0].Line] - s.Rows[ends[^1].Line]);
        }
        foreach (var iron in _ironEnds)
        foreach (var across in _acrossEnds)
            if (RowOf(s, iron) > RowOf(s, across))
                cost += PerBridgeCrossing;
        return cost;
    }

    private int RowOf(SideState s, (int Winding, bool IsFrom) end)
    {
        var ends = _graph.Windings[end.Winding].Fixed;
        return s.Rows[(end.IsFrom ? ends[0] : ends[^1]).Line];
    }
}
