using System.Collections.Immutable;

namespace Ohmstead.Workshop.Drawing;

/// <summary>One mark of a drawing.</summary>
public abstract record Mark(Role Role)
{
    /// <summary>The smallest box around it, line widths left out.</summary>
    public abstract Box Extent { get; }
}

/// <summary>Straight lines from point to point.</summary>
/// <param name="IsDashed">Drawn with gaps.</param>
public sealed record Polyline(Role Role, ImmutableArray<Spot> Points, bool IsDashed = false) : Mark(Role)
{
    /// <inheritdoc/>
    public override Box Extent => Box.Of(Points.AsSpan());
}

/// <summary>A rectangle.</summary>
/// <param name="Round">Radius of its corners.</param>
public sealed record Rectangle(Role Role, Box Box, double Round = 0, bool IsDashed = false) : Mark(Role)
{
    /// <inheritdoc/>
    public override Box Extent => Box;
}

/// <summary>A circle; whether it is filled follows from its role.</summary>
public sealed record Circle(Role Role, Spot Centre, double Radius) : Mark(Role)
{
    /// <inheritdoc/>
    public override Box Extent => new Box(Centre.X, Centre.Y, 0, 0).Grown(Radius);
}

/// <summary>A closed area with straight edges.</summary>
public sealed record Polygon(Role Role, ImmutableArray<Spot> Points) : Mark(Role)
{
    /// <inheritdoc/>
    public override Box Extent => Box.Of(Points.AsSpan());
}

/// <summary>An open curve: a start and cubic Bézier pieces.</summary>
public sealed record Curve(Role Role, Spot Start, ImmutableArray<Bezier> Pieces, bool IsDashed = false) : Mark(Role)
{
    /// <inheritdoc/>
    /// <remarks>The box of the control points: never too small.</remarks>
    public override Box Extent => Box.Of([Start, .. Pieces.SelectMany(p => new[] { p.Near, p.Far, p.End })]);
}

/// <summary>One cubic piece: control point near its start, one near its end, and the end.</summary>
public readonly record struct Bezier(Spot Near, Spot Far, Spot End);

/// <summary>Which part of a text stands at its point.</summary>
public enum Anchor
{
    /// <summary>Its left end.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its right end.</summary>
    End,
}

/// <summary>One line of text.</summary>
/// <param name="At">A point on its base line.</param>
/// <param name="Size">Height of the letters from line to line.</param>
public sealed record Text(Role Role, string Words, Spot At, Anchor Anchor, double Size) : Mark(Role)
{
    /// <inheritdoc/>
    /// <remarks>An estimate that errs on the wide side: which font will be used is not known here.</remarks>
    public override Box Extent
    {
        get
        {
            var width = Role == Role.Small ? TextWidth.Of(Words, Size) : TextWidth.OfBold(Words, Size);
            var left = Anchor switch
            {
                Anchor.Start => At.X,
                Anchor.Middle => At.X - (width / 2),
                _ => At.X - width,
            };
            return new(left, At.Y - (0.76 * Size), width, 0.98 * Size);
        }
    }
}
