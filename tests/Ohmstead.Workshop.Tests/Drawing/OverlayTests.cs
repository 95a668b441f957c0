using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.Workshop.Tests.Drawing;

public sealed class OverlayTests
{
    private static readonly TypeSheet Twin = DrawnSheets.Sheet("demo/twin-175.sheet.json");

    private static readonly CircuitLayout Layout = CircuitLayout.Of(Twin);

    private static DrawingList Draw(Overlay overlay) => CircuitDrawing.Draw(Layout, overlay);

    private static Group Element(DrawingList drawing, string id) => drawing.Groups.Single(g => g.Kind == GroupKind.Element && g.Id == id);

    private static IEnumerable<string> Words(Group group) => group.Marks.OfType<Text>().Select(t => t.Words);

    [Theory]
    [InlineData(0.87, "87 %", "very likely, 87 %", Role.SuspectHigh)]
    [InlineData(0.5, "50 %", "likely, 50 %", Role.SuspectMedium)]
    [InlineData(0.08, "8 %", "unlikely, 8 %", Role.SuspectLow)]
    public void Suspicion_shows_as_a_figure_a_word_and_a_shape(double chance, string figure, string words, Role role)
    {
        foreach (var id in new[] { "breaker-1", "roller-1", "main", "joint-8" })
        {
            var group = Element(Draw(Overlay.None with { Suspicion = ImmutableDictionary<string, double>.Empty.Add(id, chance) }), id);
            Assert.Contains(figure, Words(group));
            Assert.Contains(words, group.Title);
            Assert.Single(group.Marks.OfType<Rectangle>(), r => r.Role == role);
        }
    }

    /// <summary>The letter of the finding on its luggage tag, within the room that the figure has.</summary>
    [Fact]
    public void A_part_with_a_finding_carries_its_letter_on_a_tag()
    {
        foreach (var id in new[] { "breaker-1", "roller-1", "joint-8" })
        {
            var overlay = Overlay.None with
            {
                Suspicion = ImmutableDictionary<string, double>.Empty.Add(id, 0.87),
                Tags = ImmutableDictionary<string, string>.Empty.Add(id, "B1"),
            };
            var (figure, tagged) = (Element(Draw(overlay with { Tags = Overlay.None.Tags }), id), Element(Draw(overlay), id));
            Assert.Contains("B1", Words(tagged));
            Assert.DoesNotContain("87 %", Words(tagged));
            Assert.Contains(", B1, very likely, 87 %", tagged.Title, StringComparison.Ordinal);
            var tag = Assert.Single(tagged.Marks.OfType<Rectangle>(), r => r.Role == Role.Tag).Box;
            var edge = Assert.Single(tagged.Marks.OfType<Rectangle>(), r => r.Role == Role.TagEdge).Box;
            Assert.Equal((tag.X, tag.Y, tag.Height), (edge.X, edge.Y, edge.Height));
            Assert.InRange(tag.Width, 20, 58);
            Assert.True(figure.Extent.With(tag).Width <= figure.Extent.Width + 1, id);
        }
    }

    [Fact]
    public void What_is_hardly_suspected_looks_as_without() =>
        Assert.Equal(
            SvgText.Write(Draw(Overlay.None)),
            SvgText.Write(Draw(Overlay.None with { Suspicion = ImmutableDictionary<string, double>.Empty.Add("disc", 0.04) }))
        );

    [Fact]
    public void Nothing_moves_when_things_are_laid_over()
    {
        var overlay = Overlay.Of(Twin, Twin.Readings.First(r => r.Quantity == Quantity.AcVolts), "15.9 to 17.0 V", "14.9 V") with
        {
            Suspicion = Twin.Elements.ToImmutableDictionary(e => e.Id, _ => 0.9),
        };
        var (bare, full) = (Draw(Overlay.None), Draw(overlay));
        Assert.Equal(
            bare.Groups.Where(g => g.Kind == GroupKind.Terminal).Select(g => (g.Id, g.Pins[0].At)),
            full.Groups.Where(g => g.Kind == GroupKind.Terminal).Select(g => (g.Id, g.Pins[0].At))
        );
        Assert.DoesNotContain(Clearance.Overlaps(full), o => o.Contains("\"90 %", StringComparison.Ordinal));
    }

    [Fact]
    public void The_leads_are_flags_that_point_at_their_terminals_with_their_word_on_them()
    {
        var drawing = Draw(Overlay.None with { Probe = new("post-1", "post-0", "", "") });
        var overlay = drawing.Groups.Single(g => g.Kind == GroupKind.Overlay);
        Assert.Equal(["red", "black"], Words(overlay));
        Assert.Equal("red lead on post 1, black lead on post 0", overlay.Title);
        foreach (var (role, post) in new[] { (Role.ProbeRed, "post-1"), (Role.ProbeBlack, "post-0") })
        {
            var tip = overlay.Marks.OfType<Polygon>().Single(p => p.Role == role).Points[0];
            Assert.Equal(PinOf(drawing, post).Y, tip.Y);
            Assert.True(tip.X > PinOf(drawing, post).X);
        }
    }

    [Fact]
    public void Leads_on_terminals_inside_the_unit_hang_below_their_line_and_stay_apart()
    {
        var joint = Twin.Elements.Single(e => e.Id == "joint-14");
        var drawing = Draw(Overlay.None with { Probe = new(joint.From, joint.To, "", "") });
        var flags = drawing.Groups.Single(g => g.Kind == GroupKind.Overlay).Marks.OfType<Polygon>().ToList();
        Assert.Equal([PinOf(drawing, joint.From).X, PinOf(drawing, joint.To).X], flags.Select(f => f.Points[0].X).ToArray());
        Assert.False(flags[0].Extent.Overlaps(flags[1].Extent));
        Assert.All(flags, f => Assert.True(f.Extent.Y > PinOf(drawing, joint.From).Y));
    }

    [Fact]
    public void A_value_stands_beside_its_post_with_the_names_of_both()
    {
        var drawing = Draw(Overlay.None with { Values = [new("post-1", "post-0", "15.9–17.0 V", "14.9 V")] });
        var value = drawing.Groups.Single(g => g.Kind == GroupKind.Overlay);
        Assert.Equal(["14.9 V", "post 1 to post 0", "(15.9–17.0 V)"], Words(value));
        Assert.EndsWith("14.9 V, should read 15.9–17.0 V", value.Title);
        Assert.InRange(value.Marks.OfType<Text>().First().At.Y - PinOf(drawing, "post-1").Y, 0, 10);
        Assert.True(drawing.Around(["post-1", "post-0"]).Holds(value.Extent));
    }

    [Fact]
    public void Values_of_many_posts_stand_one_below_the_other()
    {
        string[] posts = ["post-1", "post-2", "post-8", "post-14"];
        var drawing = Draw(Overlay.None with { Values = [.. posts.Select(p => new PairValue(p, "post-0", "1–2 V", "3 V"))] });
        var cells = drawing.Groups.Where(g => g.Kind == GroupKind.Overlay).ToList();
        Assert.Equal(4, cells.Count);
        foreach (var a in cells)
        foreach (var b in drawing.Groups.Where(g => g != a && g.Kind != GroupKind.Net))
            Assert.False(a.Extent.Overlaps(b.Extent), $"{a.Title} over {b.Title}");
    }

    [Fact]
    public void A_value_between_terminals_on_both_sides_of_the_core_is_said_below_with_their_names()
    {
        var drawing = Draw(Overlay.None with { Values = [new("blade-1", "post-0", "above 2 MΩ", "")] });
        var text = drawing.Groups.Single(g => g.Kind == GroupKind.Overlay).Marks.OfType<Text>().Single();
        Assert.Equal("blade 1 to post 0: should read above 2 MΩ", text.Words);
        Assert.All(drawing.Groups.Where(g => g.Kind != GroupKind.Overlay), g => Assert.True(g.Extent.Bottom < text.Extent.Y));
    }

    [Fact]
    public void The_measured_path_is_dark_and_all_else_pale()
    {
        var reading = Twin.FindReading("ohms-14")!;
        var drawing = Draw(Overlay.Of(Twin, reading));
        Assert.All(
            drawing.Groups.Where(g => g.Kind == GroupKind.Element),
            g => Assert.Equal(g.Id is "w-14" or "joint-14" or "main" or "joint-main" or "w-0" ? Tone.Measured : Tone.Hushed, g.Tone)
        );
        Assert.Contains("data-element=\"w-14\" class=\"measured\"", SvgText.Write(drawing));
        Assert.All(Draw(Overlay.None).Groups, g => Assert.Equal(Tone.Plain, g.Tone));
    }

    [Fact]
    public void A_probe_at_an_unknown_terminal_is_passed_over() =>
        Assert.DoesNotContain(
            Draw(Overlay.None with { Probe = new("post-1", "nowhere", "1 V", "") }).Groups,
            g => g.Kind == GroupKind.Overlay
        );

    [Fact]
    public void A_slider_moves_along_its_winding_with_its_throttle()
    {
        var at = new[] { 0.0, 0.5, 1.0 }.Select(x => ArrowY(Draw(With("throttle-1", new(x, ""))))).ToList();
        var winding = Element(Draw(Overlay.None), "main");
        var fromEnd = winding.Pins.Single(p => p.Terminal == "main-start").At.Y;
        Assert.True(Math.Abs(at[0] - fromEnd) < Math.Abs(at[1] - fromEnd) && Math.Abs(at[1] - fromEnd) < Math.Abs(at[2] - fromEnd));
        Assert.Equal(ArrowY(Draw(Overlay.None)), at[0]);

        static double ArrowY(DrawingList drawing) => Element(drawing, "roller-1").Marks.OfType<Polygon>().Single().Points[0].Y;
    }

    [Fact]
    public void Switches_stand_as_their_selector_does()
    {
        var (rest, pressed) = (Draw(Overlay.None), Draw(With("whistle", new(0, "1-step-1"))));
        foreach (var (id, isClosedAtRest) in new[] { ("run-1", true), ("kick-1", false), ("out-1", false) })
        {
            Assert.Equal(isClosedAtRest, IsLevel(Element(rest, id)));
            Assert.Equal(!isClosedAtRest, IsLevel(Element(pressed, id)));
        }
        Assert.EndsWith(", open", Element(rest, "kick-1").Title);
        Assert.EndsWith(", closed", Element(pressed, "kick-1").Title);

        static bool IsLevel(Group contact) =>
            contact.Marks.OfType<Polyline>().Last() is var blade && blade.Points[0].Y == blade.Points[1].Y;
    }

    [Fact]
    public void Lifted_elements_are_dashed_and_new_ones_say_so()
    {
        var drawing = Draw(Overlay.None with { Lifted = ["w-14"], Renewed = ["cord-1"] });
        Assert.All(Element(drawing, "w-14").Marks.OfType<Polyline>(), p => Assert.True(p.IsDashed && p.Role == Role.Dimmed));
        Assert.Contains("out", Words(Element(drawing, "w-14")));
        Assert.Contains("new", Words(Element(drawing, "cord-1")));
        Assert.All(Element(drawing, "cord-1").Marks.OfType<Polyline>(), p => Assert.False(p.IsDashed));
    }

    [Fact]
    public void A_reading_of_the_source_is_probed_at_the_source()
    {
        var reading = Twin.Readings.First(r => r.Quantity == Quantity.Watts);
        var probe = Overlay.Of(Twin, reading, "8 to 15 W").Probe!;
        Assert.Equal(
            (reading.State.Source!.From, reading.State.Source.To, "8 to 15 W", ""),
            (probe.First, probe.Second, probe.Expected, probe.Measured)
        );
    }

    [Fact]
    public void Every_element_takes_a_finger()
    {
        Assert.All(
            Draw(Overlay.None).Groups.Where(g => g.Kind == GroupKind.Element),
            g =>
            {
                var hit = g.Marks.Single(m => m.Role == Role.Hit).Extent;
                Assert.True(hit.Width >= 48 && hit.Height >= 48);
                Assert.All(g.Marks, m => Assert.True(hit.Holds(m.Extent)));
            }
        );
    }

    private static Spot PinOf(DrawingList drawing, string id) =>
        drawing.Groups.Single(g => g.Kind == GroupKind.Terminal && g.Id == id).Pins[0].At;

    private static Overlay With(string control, ControlPosition position) =>
        Overlay.None with
        {
            Controls = Overlay.None.Controls.Add(control, position),
        };
}
