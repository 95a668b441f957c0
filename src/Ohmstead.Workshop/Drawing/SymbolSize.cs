namespace Ohmstead.Workshop.Drawing;

/// <summary>Sizes of signs that several parts of the drawing must agree on.</summary>
internal static class SymbolSize
{
    /// <summary>Half the length of a leakage path's sign, leads included.</summary>
    public const double HalfPath = 24;

    /// <summary>Radius of the circle of a terminal.</summary>
    public const double Terminal = 5;

    /// <summary>Radius of a terminal at the edge: a post or a blade.</summary>
    public const double Post = 9;

    /// <summary>Radius of the dot where wires meet.</summary>
    public const double Dot = 4;

    /// <summary>How far the turns of a winding bulge towards the core.</summary>
    public const double Bulge = 11;
}
