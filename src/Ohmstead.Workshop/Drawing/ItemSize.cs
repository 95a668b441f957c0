using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// The room that an element or terminal takes on its line: its sign, its name above, and below a strip kept free for what is
/// laid over: a chance, a word, a probe.
/// </summary>
/// <param name="Half">Half the width of the sign, leads included.</param>
/// <param name="HalfLabel">Half the width of the name; 0 without one.</param>
/// <param name="HalfBelow">Half the width of what may stand below.</param>
/// <param name="TextSize">Size of the name.</param>
internal readonly record struct ItemSize(double Half, double HalfLabel, double HalfBelow, double TextSize)
{
    /// <summary>Names of parts.</summary>
    public const double NameSize = 17;

    /// <summary>The smallest letters of a drawing: turns, leakage paths, what was read.</summary>
    public const double SmallSize = 16;

    /// <summary>Posts and blades.</summary>
    public const double PostSize = 19;

    /// <summary>From a line to the base of the lowest line of a name above it.</summary>
    public const double AboveGap = 19;

    /// <summary>From a line to the base of the words below it.</summary>
    public const double BelowGap = 29;

    /// <summary>Height of the strip below a line.</summary>
    public const double Strip = 36;

    /// <summary>The thick edge of a tag.</summary>
    public const double TagEdge = 7;

    /// <summary>Between the edge of a tag and its words.</summary>
    public const double TagRoom = 5;

    /// <summary>Half the width of "> 99 %" in bold letters: no tag is wider.</summary>
    private const double HalfFigure = 29;

    /// <summary>The room of an item.</summary>
    public static ItemSize Of(Item item)
    {
        if (item.Element is not { } e)
            return new(SymbolSize.Terminal, 0, SymbolSize.Terminal, SmallSize);
        var size = IsSmall(e.Kind) ? SmallSize : NameSize;
        return new(Symbols.HalfOf(e.Kind), TextWidth.OfBold(item.Label, size) / 2, HalfFigure, size);
    }

    /// <summary>A wire, joint or leakage path: its name is small or left out.</summary>
    public static bool IsSmall(ElementKind kind) => kind is ElementKind.Wire or ElementKind.Joint or ElementKind.Insulation;
}
