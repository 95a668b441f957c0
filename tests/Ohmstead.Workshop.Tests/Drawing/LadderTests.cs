using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.Workshop.Tests.Drawing;

public sealed class LadderTests
{
    private static readonly TypeSheet Twin = DrawnSheets.Sheet("demo/twin-175.sheet.json");

    private static readonly ImmutableDictionary<string, string> Nothing = ImmutableDictionary<string, string>.Empty;

    [Fact]
    public void Each_part_of_the_path_has_its_row_between_the_two_terminals()
    {
        foreach (var file in DrawnSheets.All)
        {
            var sheet = DrawnSheets.Sheet(file);
            foreach (var lane in Lane.Of(sheet))
                if (MeasuredPath.Between(sheet, AtRest(), lane.First, lane.Second) is { } path)
                {
                    var rungs = Of(sheet, path).Rungs;
                    Assert.Equal([lane.First, .. path.Parts.Select(p => p.Id), lane.Second], rungs.Select(r => r.Id));
                    Assert.All(rungs, r => Assert.NotEmpty(r.Name));
                }
        }
    }

    [Fact]
    public void A_suspected_part_says_what_is_wrong_and_any_other_how_it_is_set()
    {
        var path = MeasuredPath.Between(Twin, AtRest(), "post-1", "post-0")!;
        var ladder = Ladder.Of(
            Twin,
            path,
            Overlay.None.Controls,
            Overlay.None.Suspicion.Add("roller-1", 0.71).Add("breaker-1", 0.04),
            Nothing.Add("roller-1", "worn, likely").Add("breaker-1", "burnt, unlikely")
        );
        var (roller, breaker) = (ladder.Rungs.Single(r => r.Id == "roller-1"), ladder.Rungs.Single(r => r.Id == "breaker-1"));
        Assert.Equal(("worn, likely", 0.71), (roller.Says, roller.Chance));
        Assert.Equal(("", 0), (breaker.Says, breaker.Chance));
        Assert.Equal("closed", ladder.Rungs.Single(r => r.Id == "run-1").Says);
    }

    [Fact]
    public void Parts_beside_the_path_are_named_below_it_but_no_wires_or_joints()
    {
        var path = MeasuredPath.Between(Twin, AtRest(), "post-14", "post-0")!;
        Assert.Contains("w-lamp", path.Also);
        var also = Assert.Single(Of(Twin, path).Also);
        Assert.Contains("pilot", also, StringComparison.Ordinal);
    }

    [Fact]
    public void Lanes_lead_from_every_post_to_the_common_one_and_from_blade_to_blade()
    {
        var lanes = Lane.Of(Twin);
        Assert.Equal(["post-1", "post-14", "post-2", "post-8"], lanes.SkipLast(1).Select(l => l.First).Order(StringComparer.Ordinal));
        Assert.All(lanes.SkipLast(1), l => Assert.Equal("post-0", l.Second));
        Assert.Equal(new("blade-1", "blade-2"), lanes[^1]);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("slider")]
    [InlineData("winding")]
    [InlineData("wire")]
    [InlineData("joint")]
    [InlineData("resistor")]
    [InlineData("insulation")]
    [InlineData("lamp")]
    [InlineData("rectifier")]
    [InlineData("switch")]
    [InlineData("breaker")]
    public void Each_sign_stands_upright_from_edge_to_edge_of_its_row(string? kind)
    {
        var svg = XDocument
            .Parse(RungSign.Write(new("x", kind is { } word ? ElementKinds.All.Single(k => k.Word() == word) : null, "X", "", false, 0)))
            .Root!;
        Assert.Equal("-34 -34 68 68", svg.Attribute("viewBox")!.Value);
        Assert.Equal("true", svg.Attribute("aria-hidden")!.Value);
        var ends = svg.Descendants()
            .Attributes("points")
            .SelectMany(p => p.Value.Split(' '))
            .Where(p => p.StartsWith("0,", StringComparison.Ordinal) || p.StartsWith("-0,", StringComparison.Ordinal))
            .Select(p => double.Parse(p.Split(',')[1], CultureInfo.InvariantCulture))
            .ToList();
        if (kind is null)
            Assert.Empty(ends);
        else
            Assert.Equal((-34, 34), (ends.Min(), ends.Max()));
    }

    [Fact]
    public void An_open_contact_stands_open_in_its_row()
    {
        var (open, closed) = (Blade(true), Blade(false));
        Assert.NotEqual(open, closed);

        static string Blade(bool isOpen) => RungSign.Write(new("x", ElementKind.Switch, "X", "", isOpen, 0));
    }

    private static Ladder Of(TypeSheet sheet, MeasuredPath path) =>
        Ladder.Of(sheet, path, Overlay.None.Controls, Overlay.None.Suspicion, Nothing);

    private static ReadingState AtRest() => new(null, Overlay.None.Controls, [], [], [], 20);
}
