using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.Workshop.Tests.Drawing;

public sealed class OverlayTests
{
    private static readonly TypeSheet Twin = DrawnSheets.Sheet("demo/twin-175.sheet.json");

    private static readonly CircuitLayout Layout = CircuitLayout.Of(Twin);

    private static DrawingList Draw(Overlay overlay) => CircuitDrawing.Draw(Layout, overlay);

    private static Group Element(DrawingList drawing, string id) =>
        drawing.Groups.Single(g => g.Kind == GroupKind.Element && g.Id == id);

    private static IEnumerable<string> Words(Group group) => group.Marks.OfType<Text>().Select(t => t.Words);

    [Theory]
    [InlineData(0.87, "likely 0.87", Role.SuspectHigh)]
    [InlineData(0.5, "maybe 0.50", Role.SuspectMedium)]
    [InlineData(0.08, "slight 0.08", Role.SuspectLow)]
    public void Suspicion_shows_as_a_word_and_a_shape(double chance, string words, Role role)
    {
        foreach (var id in new[] { "breaker-1", "roller-1", "main", "joint-8" })
        {
            var group = Element(
                Draw(Overlay.None with { Suspicion = ImmutableDictionary<string, double>.Empty.Add(id, chance) }),
                id
            );
            Assert.Contains(id == "joint-8" ? words.Split(' ')[1] : words, Words(group));
            Assert.Contains(words, group.Title);
            Assert.Single(group.Marks.OfType<Rectangle>(), r => r.Role == role);
        }
    }

    [Fact]
    public void What_is_hardly_suspected_looks_as_without() =>
        Assert.Equal(
            SvgText.Write(Draw(Overlay.None)),
            SvgText.Write(
                Draw(Overlay.None with { Suspicion = ImmutableDictionary<string, double>.Empty.Add("disc", 0.04) })
            )
        );

    [Fact]
    public void Nothing_moves_when_things_are_laid_over()
    {
        var overlay = Overlay.Of(
            Twin.Readings.First(r => r.Quantity == Quantity.AcVolts),
            "15.9 to 17.0 V",
            "14.9 V"
        ) with
        {
            Suspicion = Twin.Elements.ToImmutableDictionary(e => e.Id, _ => 0.9),
        };
        var (bare, full) = (Draw(Overlay.None), Draw(overlay));
        Assert.Equal(
            bare.Groups.Where(g => g.Kind == GroupKind.Terminal).Select(g => (g.Id, g.Pins[0].At)),
            full.Groups.Where(g => g.Kind == GroupKind.Terminal).Select(g => (g.Id, g.Pins[0].At))
        );
        Assert.DoesNotContain(
            Clearance.Overlaps(full),
            o => o.Contains("\"likely", StringComparison.Ordinal) || o.Contains("\"0.90", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void The_probes_stand_at_their_terminals_with_the_band_between()
    {
        var drawing = Draw(Overlay.None with { Probe = new("post-1", "post-0", "15.9 to 17.0 V", "14.9 V") });
        var overlay = drawing.Groups.Single(g => g.Kind == GroupKind.Overlay);
        var discs = overlay.Marks.OfType<Circle>().Where(c => c.Role == Role.Probe).Select(c => c.Centre);
        Assert.Equal([PinOf("post-1"), PinOf("post-0")], discs);
        Assert.Equal(["expected 15.9 to 17.0 V", "measured 14.9 V", "1", "2"], Words(overlay));
        Assert.True(drawing.Around(["post-1", "post-0"]).Holds(overlay.Extent));
        var band = overlay.Marks.OfType<Text>().First().At.Y;
        Assert.InRange(
            band,
            Math.Min(PinOf("post-1").Y, PinOf("post-0").Y),
            Math.Max(PinOf("post-1").Y, PinOf("post-0").Y)
        );

        Spot PinOf(string id) => drawing.Groups.Single(g => g.Kind == GroupKind.Terminal && g.Id == id).Pins[0].At;
    }

    [Fact]
    public void A_value_between_terminals_on_both_sides_of_the_core_is_told_below_with_their_names()
    {
        var drawing = Draw(Overlay.None with { Values = [new("blade-1", "post-0", "above 2 MΩ", "")] });
        var text = drawing.Groups.Single(g => g.Kind == GroupKind.Overlay).Marks.OfType<Text>().Single();
        Assert.Equal("blade-1 to post-0: expected above 2 MΩ", text.Words);
        Assert.All(
            drawing.Groups.Where(g => g.Kind != GroupKind.Overlay),
            g => Assert.True(g.Extent.Bottom < text.Extent.Y)
        );
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
        Assert.True(
            Math.Abs(at[0] - fromEnd) < Math.Abs(at[1] - fromEnd)
                && Math.Abs(at[1] - fromEnd) < Math.Abs(at[2] - fromEnd)
        );
        Assert.Equal(ArrowY(Draw(Overlay.None)), at[0]);

        static double ArrowY(DrawingList drawing) =>
            Element(drawing, "roller-1").Marks.OfType<Polygon>().Single().Points[0].Y;
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
        Assert.Contains("open, closed when whistle is 1-step-1 or 1-step-2", Element(rest, "kick-1").Title);

        static bool IsLevel(Group contact) =>
            contact.Marks.OfType<Polyline>().ElementAt(2) is var blade && blade.Points[0].Y == blade.Points[1].Y;
    }

    [Fact]
    public void Lifted_elements_are_dashed_and_new_ones_say_so()
    {
        var drawing = Draw(Overlay.None with { Lifted = ["w-14"], Renewed = ["cord-1"] });
        Assert.All(
            Element(drawing, "w-14").Marks.OfType<Polyline>(),
            p => Assert.True(p.IsDashed && p.Role == Role.Dimmed)
        );
        Assert.Contains("lifted", Words(Element(drawing, "w-14")));
        Assert.Contains("new", Words(Element(drawing, "cord-1")));
        Assert.All(Element(drawing, "cord-1").Marks.OfType<Polyline>(), p => Assert.False(p.IsDashed));
    }

    [Fact]
    public void A_reading_of_the_source_is_probed_at_the_source()
    {
        var reading = Twin.Readings.First(r => r.Quantity == Quantity.Watts);
        var probe = Overlay.Of(reading, "8 to 15 W").Probe!;
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

    private static Overlay With(string control, ControlPosition position) =>
        Overlay.None with
        {
            Controls = Overlay.None.Controls.Add(control, position),
        };
}
