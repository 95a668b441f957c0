using System.Globalization;
using System.Xml.Linq;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.Workshop.Tests.Drawing;

public sealed class SvgTextTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void The_text_is_well_formed_and_names_every_element_and_terminal()
    {
        foreach (var file in DrawnSheets.All)
        {
            var drawing = DrawnSheets.Of(file);
            var root = XDocument.Parse(SvgText.Write(drawing)).Root!;
            Assert.Equal(Ids(GroupKind.Element), root.Descendants().Attributes("data-element").Select(a => a.Value));
            Assert.Equal(Ids(GroupKind.Terminal), root.Descendants().Attributes("data-terminal").Select(a => a.Value));
            Assert.All(root.Descendants(Svg + "g"), g => Assert.NotEmpty(g.Element(Svg + "title")!.Value));

            IEnumerable<string> Ids(GroupKind kind) => drawing.Groups.Where(g => g.Kind == kind).Select(g => g.Id);
        }
    }

    [Fact]
    public void Each_kind_of_mark_is_written_with_its_measures()
    {
        var drawing = new DrawingList(
            "A <b> & \"c\"",
            new(-1, 0.5, 10, 20.125),
            [
                new Polyline(Role.Wire, [new(0, 1), new(2.5, 1)], true),
                new Polygon(Role.Solid, [new(0, 0), new(1, 0), new(1, 1)]),
                new Rectangle(Role.SuspectHigh, new(1, 2, 3, 4), 5),
                new Circle(Role.Terminal, new(6, 7), 8),
                new Curve(Role.Symbol, new(0, 0), [new(new(1, 2), new(3, 4), new(5, 6))]),
                new Text(Role.ProbeText, "5 < 6", new(1, 2), Anchor.End, 14),
            ]
        );
        var root = XDocument.Parse(SvgText.Write(drawing)).Root!;
        Assert.Equal("-1 0.5 10 20.12", root.Attribute("viewBox")!.Value);
        Assert.Equal("A <b> & \"c\"", root.Element(Svg + "title")!.Value);
        Assert.Equal(
            [
                "polyline class=d-wire dashed points=0,1 2.5,1",
                "polygon class=d-solid points=0,0 1,0 1,1",
                "rect class=d-suspect-high x=1 y=2 width=3 height=4 rx=5",
                "circle class=d-terminal cx=6 cy=7 r=8",
                "path class=d-symbol d=M0,0 C1,2 3,4 5,6",
                "text class=d-probe-text x=1 y=2 font-size=14 text-anchor=end 5 < 6",
            ],
            root.Elements()
                .Skip(1)
                .Select(e =>
                    $"{e.Name.LocalName} {string.Join(' ', e.Attributes().Select(a => $"{a.Name.LocalName}={a.Value}"))}{(e.Value.Length > 0 ? " " + e.Value : "")}"
                )
        );
    }

    [Fact]
    public void A_view_shows_only_its_part() =>
        Assert.Contains("viewBox=\"1 2 3 4\"", SvgText.Write(DrawnSheets.Of("demo/solo-110.sheet.json"), new Box(1, 2, 3, 4)));

    [Fact]
    public void Every_role_has_a_look()
    {
        foreach (var role in Enum.GetValues<Role>())
            Assert.Contains("." + SvgText.ClassOf(role), SvgText.Style);
    }

    [Fact]
    public void Numbers_keep_their_point_under_a_comma_culture()
    {
        var sheet = DrawnSheets.Sheet("demo/solo-110.sheet.json");
        var before = SvgText.Write(DrawnSheets.Draw(sheet));
        var culture = CultureInfo.CurrentCulture;
        try
        {
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(before, SvgText.Write(DrawnSheets.Draw(sheet)));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }
}
