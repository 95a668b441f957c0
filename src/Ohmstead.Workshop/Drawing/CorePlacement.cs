using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// The core with what is drawn in its middle. Leakage paths to the iron stand above it, those across below; their wires run
/// between core and windings, so that they cross nothing that leaves the windings outwards.
/// </summary>
internal sealed class CorePlacement
{
    private const double FirstTrack = 76;
    private const double TrackGap = 14;
    private const double SymbolAt = 46;
    private const double RowGap = 78;
    private const double CoreMargin = 18;

    /// <summary>A core across which less of its one winding's ohms stand does nothing.</summary>
    private const double LeastInduced = 0.01;

    private readonly CircuitSides _sides;
    private readonly List<(Element Path, End Left, End Right)> _iron = [];
    private readonly List<(Element Path, End Left, End Right)> _across = [];

    /// <summary>Where a path starts on a side: its terminal and height at the windings. The iron has no side.</summary>
    private readonly record struct End(string Net, bool IsIron, double Y);

    private CorePlacement(CircuitSides sides) => _sides = sides;

    /// <summary>Half the distance between the windings of the two sides.</summary>
    public double HalfGap { get; private set; } = 48;

    /// <summary>Each core with its upper and lower end.</summary>
    public List<(string Id, double Top, double Bottom)> Bars { get; } = [];

    public List<PlacedBridge> Bridges { get; } = [];

    /// <summary>Where the circle of the iron stands; null without one.</summary>
    public Spot? Iron { get; private set; }

    public static CorePlacement Of(TypeSheet sheet, CircuitSides sides, PlacedSide mains, PlacedSide posts)
    {
        var placement = new CorePlacement(sides);
        for (var k = 0; k < sheet.Cores.Length; k++)
        {
            var reaches = new[] { SideAlignment.Reach(mains, k), SideAlignment.Reach(posts, k) }
                .OfType<(double Top, double Bottom)>()
                .ToList();
            if (reaches.Count > 0 && !IsFormer(sheet, sheet.Cores[k]))
                placement.Bars.Add((sheet.Cores[k].Id, reaches.Min(r => r.Top) - CoreMargin, reaches.Max(r => r.Bottom) + CoreMargin));
        }
        placement.Sort(mains, posts);
        placement.Draw();
        return placement;
    }

    /// <summary>What a resistance wire is wound on: nothing is induced through it, and it is no core to anyone who looks.</summary>
    private static bool IsFormer(TypeSheet sheet, Core core) =>
        sheet.Windings.Where(w => w.Core == core.Id).ToList() is [var wire] && core.LossOhms < LeastInduced * wire.Ohms;

    private void Sort(PlacedSide mains, PlacedSide posts)
    {
        var used = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var path in _sides.Bridges)
        {
            var (a, b) = (EndOf(path.From), EndOf(path.To));
            var isSwapped = a.IsIron ? _sides.IsMains(path.To) : !_sides.IsMains(path.From);
            var (left, right) = isSwapped ? (b, a) : (a, b);
            (left.IsIron || right.IsIron ? _iron : _across).Add((path, left, right));
        }

        End EndOf(string terminal)
        {
            if (terminal == _sides.Iron)
                return new(terminal, true, 0);
            var side = _sides.IsMains(terminal) ? mains : posts;
            foreach (var w in side.Windings)
            {
                if (w.Winding.Winding.From == terminal)
                    return new(terminal, false, w.EndY(true));
                if (w.Winding.Winding.To == terminal)
                    return new(terminal, false, w.EndY(false));
            }
            var nth = used[terminal] = used.GetValueOrDefault(terminal) + 1;
            return new(terminal, false, side.Lines.Where(l => l.IsToCore && l.Line.FirstNet == terminal).ElementAt(nth - 1).Y);
        }
    }

    private void Draw()
    {
        if (_iron.Count + _across.Count == 0)
            return;
        var (top, bottom) = Bars.Count == 0 ? (0, 0) : (Bars.Min(b => b.Top), Bars.Max(b => b.Bottom));
        var ends = _iron.Concat(_across).SelectMany(b => new[] { b.Left, b.Right }).Where(e => !e.IsIron).ToList();
        (top, bottom) = (Math.Min(top, ends.Min(e => e.Y)), Math.Max(bottom, ends.Max(e => e.Y)));
        var left = _iron.Where(b => b.Right.IsIron).OrderByDescending(b => b.Left.Y).ToList();
        var right = _iron.Where(b => b.Left.IsIron).OrderByDescending(b => b.Right.Y).ToList();
        var across = _across.OrderBy(b => b.Left.Y + b.Right.Y).ToList();
        var leftStart = Clear(left.Select(b => b.Left.Y), across.Select(b => b.Left.Y)) ? 0 : left.Count;
        var rightStart = Clear(right.Select(b => b.Right.Y), across.Select(b => b.Right.Y)) ? 0 : right.Count;
        var tracks = new[] { left.Count, right.Count, leftStart + across.Count, rightStart + across.Count }.Max();
        HalfGap = FirstTrack + (TrackGap * tracks) + SymbolSize.Bulge;
        if (_sides.Iron is not null)
            Iron = new(0, top - 54);
        for (var n = 0; n < left.Count; n++)
            Bridges.Add(ToIron(left[n].Path, left[n].Left, -1, n));
        for (var n = 0; n < right.Count; n++)
            Bridges.Add(ToIron(right[n].Path, right[n].Right, 1, n));
        for (var n = 0; n < across.Count; n++)
            Bridges.Add(Across(across[n], leftStart + n, rightStart + n, bottom + RowGap - 8 + (RowGap * n)));
    }

    private static bool Clear(IEnumerable<double> upward, IEnumerable<double> downward) =>
        upward.DefaultIfEmpty(double.MinValue).Max() < downward.DefaultIfEmpty(double.MaxValue).Min();

    private static double Track(int n) => FirstTrack + (TrackGap * n);

    private PlacedBridge ToIron(Element path, End end, int side, int n)
    {
        var y = Iron!.Value.Y - (RowGap * n);
        var at = new Spot(side * SymbolAt, y);
        var inner = new Spot(side * (SymbolAt - SymbolSize.HalfPath), y);
        var outer = new Spot(side * (SymbolAt + SymbolSize.HalfPath), y);
        var wires = new List<(string Net, Spot[] Points)>
        {
            (_sides.Iron!, n == 0 ? [Iron.Value, inner] : [Iron.Value, new(0, y), inner]),
            (end.Net, [outer, new(side * Track(n), y), new(side * Track(n), end.Y), new(side * HalfGap, end.Y)]),
        };
        return new(path, at, (path.From == _sides.Iron) == (side > 0), wires);
    }

    private PlacedBridge Across((Element Path, End Left, End Right) bridge, int leftTrack, int rightTrack, double y)
    {
        Spot[] Wire(int side, double track, double endY) =>
            [new(side * SymbolSize.HalfPath, y), new(side * track, y), new(side * track, endY), new(side * HalfGap, endY)];
        return new(
            bridge.Path,
            new(0, y),
            bridge.Path.From == bridge.Left.Net,
            [(bridge.Left.Net, Wire(-1, Track(leftTrack), bridge.Left.Y)), (bridge.Right.Net, Wire(1, Track(rightTrack), bridge.Right.Y))]
        );
    }
}

/// <summary>A leakage path across or to the core, drawn above or below it.</summary>
/// <param name="IsFromLeft">The element's `from` is on the left.</param>
/// <param name="Wires">Its wires, each with the terminal to which it belongs.</param>
internal sealed record PlacedBridge(Element Path, Spot At, bool IsFromLeft, IReadOnlyList<(string Net, Spot[] Points)> Wires);
