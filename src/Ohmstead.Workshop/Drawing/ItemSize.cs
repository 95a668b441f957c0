using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>The room that an element or terminal takes on its line: its sign, and its name above (elements) or below (terminals).</summary>
/// <param name="Half">Half the width of the sign, leads included.</param>
/// <param name="Label">The name on one line or two.</param>
/// <param name="TextSize">Size of the name.</param>
internal sealed record ItemSize(double Half, string[] Label, double TextSize)
{
    public const double NameSize = 13;
    public const double SmallSize = 11.5;
    public const double PostSize = 15;

    /// <summary>From a line to the base of the lowest line of a name above it.</summary>
    public const double AboveGap = 15;

    /// <summary>From a line to the base of the first line of a name below it.</summary>
    public const double BelowGap = 20;

    private const double ElementRoom = 72;
    private const double TerminalRoom = 72;

    /// <summary>Half the width of "maybe 0.50", the widest words for a suspicion: they stand above the name.</summary>
    private const double HalfWords = 39;

    /// <summary>Half the width of the name, and of what may stand above it.</summary>
    public double HalfLabel =>
        IsSmall
            ? Label.Max(l => TextWidth.Of(l, TextSize)) / 2
            : Math.Max(HalfWords, Label.Max(l => TextWidth.OfBold(l, TextSize)) / 2);

    /// <summary>A wire, joint, leakage path or inner terminal: its name is small, and a suspicion is a figure alone.</summary>
    public bool IsSmall => TextSize <= SmallSize;

    public static ItemSize Of(Item item) => item.Element is { } e ? OfElement(e) : OfTerminal(item.Terminal);

    public static ItemSize OfTerminal(string terminal) =>
        new(5, TextWidth.Wrap(terminal, SmallSize, TerminalRoom), SmallSize);

    private static ItemSize OfElement(Element e)
    {
        var isSmall = e.Kind is "wire" or "joint" or "insulation";
        var size = isSmall ? SmallSize : NameSize;
        return new(HalfOf(e.Kind), TextWidth.Wrap(e.Id, size, ElementRoom), size);
    }

    private static double HalfOf(string kind) =>
        kind switch
        {
            "joint" => 12,
            "wire" => 20,
            "rectifier" or "lamp" => 18,
            "switch" or "breaker" => 20,
            _ => 22,
        };
}
