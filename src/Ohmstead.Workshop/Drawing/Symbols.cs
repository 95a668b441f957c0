using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// The signs of elements that lie on a line, as American schematics draw them. Each reaches from −half to +half along its
/// line, leads included, with its `from` at the left unless turned round.
/// </summary>
internal static class Symbols
{
    private const double Ring = 4;
    private const double Contacts = 15;

    /// <summary>Half the length of a sign that stands by itself, leads included.</summary>
    public static double HalfOf(ElementKind kind) =>
        kind switch
        {
            ElementKind.Joint => 11,
            ElementKind.Wire => 16,
            ElementKind.Rectifier or ElementKind.Lamp or ElementKind.Capacitor => 20,
            ElementKind.Winding
            or ElementKind.Slider
            or ElementKind.Breaker
            or ElementKind.Resistor
            or ElementKind.Switch
            or ElementKind.Insulation => 24,
        };

    /// <summary>The sign of an element that is no winding.</summary>
    /// <param name="half">Half the length.</param>
    /// <param name="isClosed">For a switch: its contact is closed.</param>
    /// <param name="isFromLeft">The `from` end is at the left.</param>
    public static IEnumerable<Mark> Of(ElementKind kind, Spot at, double half, bool isFromLeft, bool isClosed, bool isLifted)
    {
        var pen = new Pen(at, isFromLeft ? 1 : -1, isLifted);
        return kind switch
        {
            ElementKind.Wire => [pen.Line((-half, 0), (half, 0))],
            ElementKind.Joint => [.. pen.Leads(half, 5.5), pen.Disc((0, 0), 5.5)],
            ElementKind.Insulation => [.. pen.Leads(half, 16), pen.Box(16, 6, true)],
            ElementKind.Lamp => Lamp(pen, half),
            ElementKind.Rectifier => Rectifier(pen, half),
            ElementKind.Switch => Contact(pen, half, isClosed),
            ElementKind.Breaker => Breaker(pen, half),
            ElementKind.Resistor => [.. pen.Leads(half, 18), pen.Line(ZigZag)],
            ElementKind.Capacitor => [.. pen.Leads(half, 4), pen.Line((-4, -13), (-4, 13)), pen.Line((4, -13), (4, 13))],
            ElementKind.Slider => [.. pen.Leads(half, 12), pen.Disc((0, 0), 12)],
            ElementKind.Winding => throw new System.Diagnostics.UnreachableException("A winding is drawn turn by turn."),
        };
    }

    private static readonly (double X, double Y)[] ZigZag = [(-18, 0), (-15, -7), (-9, 7), (-3, -7), (3, 7), (9, -7), (15, 7), (18, 0)];

    private static IEnumerable<Mark> Lamp(Pen pen, double half)
    {
        const double Radius = 13;
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
        [.. pen.Leads(half, 11), pen.Area((-11, -11), (-11, 11), (11, 0)), pen.Line((11, -12), (11, 12))];

    /// <summary>A blade on two contacts; open it stands up.</summary>
    private static IEnumerable<Mark> Contact(Pen pen, double half, bool isClosed) =>
        [
            .. pen.Leads(half, Contacts + Ring),
            pen.Line((-Contacts + Ring, -1), isClosed ? (Contacts - Ring, -1) : (Contacts - 3, -13)),
            pen.Circle((-Contacts, 0), Ring),
            pen.Circle((Contacts, 0), Ring),
        ];

    /// <summary>Two contacts and the arc between them that opens when it is hot.</summary>
    private static IEnumerable<Mark> Breaker(Pen pen, double half) =>
        [
            .. pen.Leads(half, Contacts + Ring),
            pen.Arc((-Contacts + 2, -Ring), (0, -14.5), (Contacts - 2, -Ring)),
            pen.Circle((-Contacts, 0), Ring),
            pen.Circle((Contacts, 0), Ring),
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

        public Mark Disc((double X, double Y) at, double radius) => new Circle(IsLifted ? Role.Dimmed : Role.Solid, Spot(at), radius);

        public Mark Circle((double X, double Y) at, double radius) => new Circle(Role, Spot(at), radius);

        public Mark Area((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) =>
            new Polygon(Role, [Spot(a), Spot(b), Spot(c)]);

        /// <summary>A curve drawn towards a point above its middle.</summary>
        public Mark Arc((double X, double Y) a, (double X, double Y) top, (double X, double Y) b) =>
            new Curve(Role, Spot(a), [new(Spot((a.X / 2, top.Y)), Spot((b.X / 2, top.Y)), Spot(b))], IsLifted);

        public Mark Box(double halfWidth, double halfHeight, bool isDashed) =>
            new Rectangle(Role, new(At.X - halfWidth, At.Y - halfHeight, 2 * halfWidth, 2 * halfHeight), 0, isDashed || IsLifted);
    }
}
