using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// One side of the circuit as lines and upright wires: each terminal with more than two neighbours is an upright wire, each
/// series of elements between two of them a horizontal line. Windings feed the lines at one end, posts end them at the other.
/// </summary>
/// <param name="CoreLines">Lines that run to the core above all windings: leakage paths whose end is no winding end.</param>
internal sealed record SideGraph(
    IReadOnlyList<SideNode> Nodes,
    IReadOnlyList<SideLine> Lines,
    IReadOnlyList<SideWinding> Windings,
    IReadOnlyList<int> CoreLines
);

/// <summary>Where a line of elements ends.</summary>
internal enum EndKind
{
    /// <summary>At a winding's end, tap or slider, or at the core for a leakage path: innermost.</summary>
    Port,

    /// <summary>In the open, just beside its winding.</summary>
    Free,

    /// <summary>At the upright wire of a terminal where more than two things meet.</summary>
    Node,

    /// <summary>At the edge of the drawing: a post or a blade.</summary>
    Outer,
}

/// <summary>An end of a line: its kind and, for a node, which.</summary>
internal readonly record struct LineEnd(EndKind Kind, int Node = -1);

/// <summary>Something on a line: an element, or a terminal between two elements.</summary>
/// <param name="Element">The element, or null for a terminal.</param>
/// <param name="Terminal">The terminal, or empty for an element.</param>
/// <param name="IsForward">The element's `from` is towards the line's first end.</param>
/// <param name="Label">The lines of its name: above an element, beside a post.</param>
internal sealed record Item(Element? Element, string Terminal, bool IsForward, string[] Label);

/// <summary>A horizontal line of elements in series from one end to the other.</summary>
/// <param name="FirstNet">Terminal to which the wire at the first end belongs.</param>
/// <param name="LastNet">Terminal to which the wire at the last end belongs.</param>
internal sealed record SideLine(LineEnd First, LineEnd Last, IReadOnlyList<Item> Items, string FirstNet, string LastNet)
{
    public SideLine Reversed() =>
        new(Last, First, [.. Items.Reverse().Select(i => i with { IsForward = !i.IsForward })], LastNet, FirstNet);
}

/// <summary>An upright wire: a terminal where more than two things meet.</summary>
/// <param name="ShowsTerminal">Its terminal's circle is on this wire, not on a line.</param>
internal sealed record SideNode(string Net, bool ShowsTerminal);

/// <summary>A port of a winding and the line that leaves it.</summary>
/// <param name="Turn">Turns from the winding's `from`; for a slider, the least turn it reaches.</param>
/// <param name="TurnTo">The same; for a slider, the greatest.</param>
internal sealed record WindingPort(string Terminal, double Turn, double TurnTo, Slider? Slider, int Line);

/// <summary>A winding with its ports: `from`, the taps by turn, `to`; then the sliders.</summary>
internal sealed record SideWinding(Winding Winding, int CoreIndex, IReadOnlyList<WindingPort> Fixed, IReadOnlyList<WindingPort> Sliders);
