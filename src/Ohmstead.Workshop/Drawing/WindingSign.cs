using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// The sign of a winding: half turns one below the other, bulging towards the core, a cusp at every tap; of the wire of a resistor a
/// zigzag.
/// </summary>
internal static class WindingSign
{
    private const double TurnHeight = 16;

    /// <summary>Share of a half circle's radius at which cubic control points stand.</summary>
    private const double Kappa = 0.5523;

    /// <param name="x">Where its leads leave, on the side away from the core.</param>
    /// <param name="outward">+1 when the lines leave to the right.</param>
    /// <param name="stops">Heights of the fixed ports, falling.</param>
    public static IEnumerable<Mark> Of(double x, int outward, IReadOnlyList<double> stops, double dotY, bool isLifted)
    {
        var pieces = ImmutableArray.CreateBuilder<Bezier>();
        for (var n = 0; n + 1 < stops.Count; n++)
        {
            var (top, bottom, height) = (stops[n], stops[n + 1], stops[n + 1] - stops[n]);
            var turns = Math.Max(1, (int)Math.Round(height / TurnHeight));
            for (var t = 0; t < turns; t++)
                HalfTurn(
                    pieces,
                    x,
                    -outward * SymbolSize.Bulge,
                    top + (height * t / turns),
                    t + 1 == turns ? bottom : top + (height * (t + 1) / turns)
                );
        }
        yield return new Curve(isLifted ? Role.Dimmed : Role.Symbol, new(x, stops[0]), pieces.ToImmutable(), isLifted);
        yield return new Circle(Role.Solid, new(x + (outward * 7), dotY), 2.8);
    }

    /// <summary>The wire of a resistor, as long as its winding would be.</summary>
    /// <param name="stops">Heights of the fixed ports, falling.</param>
    public static Mark ZigZag(double x, int outward, IReadOnlyList<double> stops, bool isLifted)
    {
        var points = ImmutableArray.CreateBuilder<Spot>();
        points.Add(new(x, stops[0]));
        for (var n = 0; n + 1 < stops.Count; n++)
        {
            var (top, height) = (stops[n], stops[n + 1] - stops[n]);
            var teeth = 2 * Math.Max(1, (int)Math.Round(height / TurnHeight));
            for (var t = 1; t < teeth; t++)
                points.Add(new(t % 2 == 1 ? x - (outward * SymbolSize.Bulge) : x, top + (height * t / teeth)));
            points.Add(new(x, stops[n + 1]));
        }
        return new Polyline(isLifted ? Role.Dimmed : Role.Symbol, points.ToImmutable(), isLifted);
    }

    private static void HalfTurn(ImmutableArray<Bezier>.Builder pieces, double x, double bulge, double top, double bottom)
    {
        var radius = (bottom - top) / 2;
        var middle = new Spot(x + bulge, top + radius);
        pieces.Add(new(new(x + (Kappa * bulge), top), new(x + bulge, top + (radius * (1 - Kappa))), middle));
        pieces.Add(new(new(x + bulge, top + (radius * (1 + Kappa))), new(x + (Kappa * bulge), bottom), new(x, bottom)));
    }
}

/// <summary>The name of a winding with its turns, in the room beside it.</summary>
internal static class WindingLabel
{
    /// <summary>Height of the name, the turns and a line for what is suspected.</summary>
    public static double HeightOf(DrawnNames names, Winding w) =>
        (names.Lines(w.Id).Length * ItemSize.NameSize) + (2 * (ItemSize.SmallSize + 2)) + 4;
}

/// <summary>The sign of a slider: a short rail beside the winding and an arrow that touches the turns.</summary>
internal static class SliderSign
{
    /// <summary>Half the length of the rail on which the arrow moves.</summary>
    public const double HalfRail = 20;

    /// <summary>Distance of the rail from the winding.</summary>
    public const double Rail = 26;

    /// <summary>From its line up to the base of the last line of its name.</summary>
    public const double NameGap = 11;

    /// <summary>Room above its line for the rail and the name.</summary>
    public static double Above(string[] name) => Math.Max(HalfRail + 4, NameGap + (name.Length * ItemSize.NameSize));

    /// <param name="share">Where the arrow stands on the rail, 0 at the top, 1 at the bottom.</param>
    public static IEnumerable<Mark> Of(double x, double y, int outward, double share)
    {
        var arrowY = y - HalfRail + (2 * HalfRail * share);
        var rail = x + (outward * Rail);
        yield return new Polyline(Role.Symbol, [new(rail, y - HalfRail), new(rail, y + HalfRail)]);
        yield return new Polyline(Role.Symbol, [new(rail, arrowY), new(x + (outward * 8), arrowY)]);
        yield return new Polygon(
            Role.Solid,
            [new(x + (outward * 1.5), arrowY), new(x + (outward * 11), arrowY - 4.5), new(x + (outward * 11), arrowY + 4.5)]
        );
    }
}
