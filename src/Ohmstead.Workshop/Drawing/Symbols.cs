using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// The signs of elements that lie on a line, after IEC 60617. Each reaches from −half to +half along its line, leads
/// included, with its `from` at the left unless turned round.
/// </summary>
internal static class Symbols
{
    /// <param name="half">Half the length.</param>
    /// <param name="isClosed">For a switch: its contact is closed.</param>
    /// <param name="isFromLeft">The `from` end is at the left.</param>
    public static IEnumerable<Mark> Of(Element e, Spot at, double half, bool isFromLeft, bool isClosed, bool isLifted)
    {
        var pen = new Pen(at, isFromLeft ? 1 : -1, isLifted);
        return e.Kind switch
        {
            "wire" => [pen.Line((-half, 0), (half, 0))],
            "joint" => [.. pen.Leads(half, 4.5), pen.Disc((0, 0), 4.5)],
            "resistor" => [.. pen.Leads(half, 15), pen.Box(15, 6, false)],
            "insulation" => [.. pen.Leads(half, 15), pen.Box(15, 6, true)],
            "lamp" => Lamp(pen, half),
            "rectifier" => Rectifier(pen, half),
            "switch" => Contact(pen, half, isClosed),
            "breaker" => Breaker(pen, half),
            _ => [.. pen.Leads(half, 15), pen.Box(15, 6, false)],
        };
    }

    private static IEnumerable<Mark> Lamp(Pen pen, double half)
    {
        const double Radius = 11;
        var slope = Radius / Math.Sqrt(2);
        return
        [
            .. pen.Leads(half, Radius),
            pen.Circle((0, 0), Radius),
            pen.Line((-slope, -slope), (slope, slope)),
            pen.Line((-slope, slope), (slope, -slope)),
        ];
    }

    private static IEnumerable<Mark> Rectifier(Pen pen, double half) =>
        [.. pen.Leads(half, 9), pen.Area((-9, -9), (-9, 9), (9, 0)), pen.Line((9, -9.5), (9, 9.5))];

    private static IEnumerable<Mark> Contact(Pen pen, double half, bool isClosed) =>
        [
            pen.Line((-half, 0), (-12, 0)),
            pen.Line((12, 0), (half, 0)),
            pen.Line((-12, 0), isClosed ? (12, 0) : (10.5, -11)),
            pen.Line((12, -4), (12, 4)),
        ];

    /// <summary>A closed contact with the sign of a thermal operation.</summary>
    private static IEnumerable<Mark> Breaker(Pen pen, double half) =>
        [
            pen.Line((-half, 0), (-12, 0)),
            pen.Line((12, 0), (half, 0)),
            pen.Line((-12, 0), (13, 2.5)),
            pen.Line((12, 0), (12, 7)),
            pen.Line((0, 1), (0, -6)),
            pen.Line((-10, -6), (-4, -6), (-4, -12), (4, -12), (4, -6), (10, -6)),
        ];

    /// <summary>Draws around a middle, mirrored or not, dashed or not.</summary>
    private readonly record struct Pen(Spot At, int Side, bool IsLifted)
    {
        private Spot Spot((double X, double Y) p) => new(At.X + (Side * p.X), At.Y + p.Y);

        private Role Role => IsLifted ? Role.Dimmed : Role.Symbol;

        public Polyline Line(params ReadOnlySpan<(double X, double Y)> points)
        {
            var spots = ImmutableArray.CreateBuilder<Spot>(points.Length);
            foreach (var p in points)
                spots.Add(Spot(p));
            return new(Role, spots.ToImmutable(), IsLifted);
        }

        public IEnumerable<Mark> Leads(double half, double from) =>
            half > from ? [Line((-half, 0), (-from, 0)), Line((from, 0), (half, 0))] : [];

        public Mark Disc((double X, double Y) at, double radius) =>
            new Circle(IsLifted ? Role.Dimmed : Role.Solid, Spot(at), radius);

        public Mark Circle((double X, double Y) at, double radius) => new Circle(Role, Spot(at), radius);

        public Mark Area((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
            new Polygon(Role, [Spot(a), Spot(b), Spot(c)]);

        public Mark Box(double halfWidth, double halfHeight, bool isDashed) =>
            new Rectangle(
                Role,
                new(At.X - halfWidth, At.Y - halfHeight, 2 * halfWidth, 2 * halfHeight),
                0,
                isDashed || IsLifted
            );
    }
}
