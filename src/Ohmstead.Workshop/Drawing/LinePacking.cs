namespace Ohmstead.Workshop.Drawing;

/// <summary>Places the elements and terminals of a line side by side so that signs and names have room.</summary>
internal static class LinePacking
{
    /// <summary>Distance from a winding to the circles of its terminals.</summary>
    public const double PortTerminal = 56;

    /// <summary>Least distance from a winding to the first upright wire.</summary>
    public const double FirstBar = 112;

    /// <summary>Where the name of a slider begins.</summary>
    public const double SliderName = 34;

    /// <summary>A lamp is so high that names below its line must stand clear of it.</summary>
    private const double TallHalf = 12;

    private const double Gap = 8;
    private const double Lead = 10;

    /// <summary>Shortest length of a line, whatever crosses it.</summary>
    public static double LeastLength(SideLine line, SideGraph graph) =>
        Pack(line, line.First.Kind == EndKind.Port, NodeRoom(line.First, graph), NodeRoom(line.Last, graph), "").Length;

    private static double NodeRoom(LineEnd end, SideGraph graph) =>
        end.Kind == EndKind.Node && graph.Nodes[end.Node].ShowsTerminal
            ? TerminalRoom(graph.Nodes[end.Node].Net) / 2
            : 0;

    /// <summary>Width of the name of a terminal that stands beside its upright wire.</summary>
    public static double TerminalRoom(string terminal) => (2 * ItemSize.OfTerminal(terminal).HalfLabel) + Gap;

    /// <summary>The terminal beside the winding from which a line comes, if it is shown there.</summary>
    public static Item? PortItem(SideLine line) =>
        line.First.Kind == EndKind.Port
        && line.Items.Count > 0
        && !(line.Items.Count == 1 && line.Last.Kind == EndKind.Outer)
            ? line.Items[0]
            : null;

    /// <summary>The terminal at the far end of a line, if it is shown there.</summary>
    public static Item? EndItem(SideLine line) =>
        line.Last.Kind == EndKind.Outer || (line.Last.Kind == EndKind.Free && line.Items.Count > 1)
            ? line.Items[^1]
            : null;

    /// <summary>
    /// Packs the items between the ends of a line as tightly as it goes. The terminal beside a winding and the one at the far
    /// end have their own places and are not among them.
    /// </summary>
    /// <param name="fromPort">The stretch begins at a winding.</param>
    /// <param name="roomFirst">Width of a name below the line at its first end.</param>
    /// <param name="roomLast">Width of a name below the line at its last end.</param>
    /// <param name="slider">Name of the slider from which the line comes, or empty.</param>
    public static Packed Pack(SideLine line, bool fromPort, double roomFirst, double roomLast, string slider)
    {
        var port = PortItem(line);
        var items = line.Items.Skip(port is null ? 0 : 1).SkipLast(EndItem(line) is null ? 0 : 1).ToList();
        var (above, below, sign) = (Gap, roomFirst + Gap, Lead);
        if (fromPort)
        {
            above = slider.Length > 0 ? SliderName + TextWidth.OfBold(slider, ItemSize.NameSize) + Gap : 0;
            (below, sign) = port is null ? (0, Lead) : (PortRight(port.Terminal) + Gap, PortTerminal + 5 + Lead);
        }
        var offsets = new double[items.Count];
        for (var n = 0; n < items.Count; n++)
        {
            var size = ItemSize.Of(items[n]);
            var at = Math.Max(sign + size.Half, (items[n].Element is null ? below : above) + size.HalfLabel);
            var isTall = items[n].Element?.Kind == "lamp";
            if (isTall)
                at = Math.Max(at, below + TallHalf);
            offsets[n] = at;
            sign = at + size.Half + 4;
            if (items[n].Element is null)
                below = at + size.HalfLabel + Gap;
            else
                above = at + size.HalfLabel + Gap;
            if (isTall)
                below = Math.Max(below, at + TallHalf);
        }
        return new(items, offsets, Math.Max(sign + Lead, Math.Max(above, below + roomLast)));
    }

    /// <summary>Right end of the name of a terminal beside a winding; a long one is pushed out of the winding.</summary>
    public static double PortRight(string terminal)
    {
        var half = ItemSize.OfTerminal(terminal).HalfLabel;
        return Math.Max(PortLeft, PortTerminal - half) + (2 * half);
    }

    /// <summary>How near to a winding the name of one of its terminals may begin.</summary>
    public const double PortLeft = 16;
}

/// <summary>A packed line.</summary>
/// <param name="Items">The items between the ends.</param>
/// <param name="Offsets">Distance of each from the first end.</param>
/// <param name="Length">Shortest length of the line.</param>
internal sealed record Packed(IReadOnlyList<Item> Items, double[] Offsets, double Length);
