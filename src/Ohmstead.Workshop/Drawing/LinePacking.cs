namespace Ohmstead.Workshop.Drawing;

/// <summary>Places the elements and terminals of a line side by side so that signs and names have room.</summary>
internal static class LinePacking
{
    /// <summary>Distance from a winding to the circles of its terminals.</summary>
    public const double PortTerminal = 56;

    /// <summary>Least distance from a winding to the first upright wire.</summary>
    public const double FirstBar = 130;

    /// <summary>Where the name of a slider begins.</summary>
    public const double SliderName = 34;

    /// <summary>Width of what may stand below a slider: "> 99 %" in bold letters.</summary>
    private const double SliderWords = 58;

    private const double Gap = 8;
    private const double Lead = 10;

    /// <summary>Shortest length of a line, whatever crosses it.</summary>
    public static double LeastLength(SideLine line) => Pack(line, line.First.Kind == EndKind.Port, []).Length;

    /// <summary>The terminal beside the winding from which a line comes, if it is shown there.</summary>
    public static Item? PortItem(SideLine line) =>
        line.First.Kind == EndKind.Port && line.Items.Count > 0 && !(line.Items.Count == 1 && line.Last.Kind == EndKind.Outer)
            ? line.Items[0]
            : null;

    /// <summary>The terminal at the far end of a line, if it is shown there.</summary>
    public static Item? EndItem(SideLine line) =>
        line.Last.Kind == EndKind.Outer || (line.Last.Kind == EndKind.Free && line.Items.Count > 1) ? line.Items[^1] : null;

    /// <summary>
    /// Packs the items between the ends of a line as tightly as it goes. The terminal beside a winding and the one at the far
    /// end have their own places and are not among them.
    /// </summary>
    /// <param name="fromPort">The stretch begins at a winding.</param>
    /// <param name="slider">The lines of the name of the slider from which the line comes, or none.</param>
    public static Packed Pack(SideLine line, bool fromPort, string[] slider)
    {
        var port = PortItem(line);
        var items = line.Items.Skip(port is null ? 0 : 1).SkipLast(EndItem(line) is null ? 0 : 1).ToList();
        var (above, below, sign) = (Gap, Gap, Lead);
        if (fromPort)
        {
            above = SliderEnd(slider);
            below = slider.Length > 0 ? SliderName + SliderWords + Gap : 0;
            if (port is not null)
                (below, sign) = (Math.Max(below, PortRight + Gap), PortRight + Lead);
        }
        var offsets = new double[items.Count];
        for (var n = 0; n < items.Count; n++)
        {
            var size = ItemSize.Of(items[n]);
            var at = Math.Max(sign + size.Half, below + size.HalfBelow);
            if (size.HalfLabel > 0)
                at = Math.Max(at, above + size.HalfLabel);
            offsets[n] = at;
            sign = at + size.Half + 4;
            if (items[n].Element is not null)
                below = at + size.HalfBelow + Gap;
            if (size.HalfLabel > 0)
                above = at + size.HalfLabel + Gap;
        }
        return new(items, offsets, Math.Max(sign + Lead, Math.Max(above, below)));
    }

    /// <summary>Right end of the circle of a terminal beside a winding.</summary>
    public const double PortRight = PortTerminal + SymbolSize.Terminal;

    private static double SliderEnd(string[] name) => name.Length > 0 ? SliderName + TextWidth.OfBold(name, ItemSize.NameSize) + Gap : 0;
}

/// <summary>A packed line.</summary>
/// <param name="Items">The items between the ends.</param>
/// <param name="Offsets">Distance of each from the first end.</param>
/// <param name="Length">Shortest length of the line.</param>
internal sealed record Packed(IReadOnlyList<Item> Items, double[] Offsets, double Length);
