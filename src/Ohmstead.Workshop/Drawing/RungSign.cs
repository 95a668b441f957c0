using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>The sign at the left of a row of a ladder: as in the drawing, set upright.</summary>
public static class RungSign
{
    private const double Half = 34;

    /// <summary>The sign as an <c>svg</c> element, 68 high.</summary>
    public static string Write(Rung rung) =>
        SvgText.Write(new("", new(-Half, -Half, 2 * Half, 2 * Half), [.. MarksOf(rung).Select(Upright)]), isDecoration: true);

    private static IEnumerable<Mark> MarksOf(Rung rung)
    {
        if (rung.Kind is not { } kind)
            return [new Circle(Role.Terminal, default, 14)];
        if (kind == ElementKind.Winding)
            return Coil();
        var half = kind switch
        {
            ElementKind.Wire or ElementKind.Slider => Half,
            ElementKind.Joint => 24,
            _ => Symbols.HalfOf(kind),
        };
        return [.. Symbols.Of(kind, default, half, true, !rung.IsOpen, false), Lead(-Half, -half), Lead(half, Half)];
    }

    private static Polyline Lead(double from, double to) => new(Role.Symbol, [new(from, 0), new(to, 0)]);

    private static IEnumerable<Mark> Coil()
    {
        const double Turn = 12;
        const double High = 9;
        var pieces = ImmutableArray.CreateBuilder<Bezier>();
        for (var x = -2 * Turn; x < 2 * Turn; x += Turn)
            pieces.Add(new(new(x, -High * 4 / 3), new(x + Turn, -High * 4 / 3), new(x + Turn, 0)));
        return [new Curve(Role.Symbol, new(-2 * Turn, 0), pieces.ToImmutable()), Lead(-Half, -2 * Turn), Lead(2 * Turn, Half)];
    }

    /// <summary>A quarter turn to the right.</summary>
    private static Mark Upright(Mark mark) =>
        mark switch
        {
            Polyline p => p with { Points = [.. p.Points.Select(Turned)] },
            Polygon p => p with { Points = [.. p.Points.Select(Turned)] },
            Circle c => c with { Centre = Turned(c.Centre) },
            Rectangle r => r with { Box = Box.Of(Turned(new(r.Box.X, r.Box.Y)), Turned(new(r.Box.Right, r.Box.Bottom))) },
            Curve c => c with
            {
                Start = Turned(c.Start),
                Pieces = [.. c.Pieces.Select(b => new Bezier(Turned(b.Near), Turned(b.Far), Turned(b.End)))],
            },
            _ => mark,
        };

    private static Spot Turned(Spot spot) => new(-spot.Y, spot.X);
}
