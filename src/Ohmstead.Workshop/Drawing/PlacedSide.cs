namespace Ohmstead.Workshop.Drawing;

/// <summary>A side in its own measure: U is the distance from the windings outwards, Y runs downwards.</summary>
internal sealed record PlacedSide(
    IReadOnlyList<PlacedLine> Lines,
    IReadOnlyList<PlacedNode> Nodes,
    IReadOnlyList<PlacedWinding> Windings,
    double OuterU
)
{
    /// <summary>The same side with every height changed.</summary>
    public PlacedSide MapY(Func<double, double> map) =>
        this with
        {
            Lines = [.. Lines.Select(l => l with { Y = map(l.Y) })],
            Nodes = [.. Nodes.Select(n => n with { Top = map(n.Top), Bottom = map(n.Bottom), CircleY = map(n.CircleY) })],
            Windings = [.. Windings.Select(w => w with { LabelY = map(w.LabelY), Ports = [.. w.Ports.Select(p => (p.Port, map(p.Y)))] })],
        };
}

/// <summary>An element or terminal on a line, at its distance from the windings.</summary>
internal readonly record struct PlacedItem(Item Item, double U);

/// <summary>A line with its items, from <paramref name="FromU"/> (nearer to the windings) to <paramref name="ToU"/>.</summary>
/// <param name="IsToCore">Runs to the core, for a leakage path whose end is no winding end.</param>
internal sealed record PlacedLine(SideLine Line, bool IsToCore, double Y, double FromU, double ToU, IReadOnlyList<PlacedItem> Items);

/// <summary>An upright wire.</summary>
/// <param name="CircleY">Where the circle of its terminal stands, when it is shown here.</param>
internal sealed record PlacedNode(SideNode Node, double U, double Top, double Bottom, double CircleY);

/// <summary>A winding with the height of each port, from top to bottom.</summary>
/// <param name="LabelY">Middle of the room for its name.</param>
internal sealed record PlacedWinding(SideWinding Winding, IReadOnlyList<(WindingPort Port, double Y)> Ports, double LabelY)
{
    public double Top => Ports[0].Y;

    public double Bottom => Ports[^1].Y;

    public double EndY(bool isFrom)
    {
        var end = isFrom ? Winding.Fixed[0] : Winding.Fixed[^1];
        return Ports.First(p => ReferenceEquals(p.Port, end)).Y;
    }
}
