using Bunit;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Background;
using Ohmstead.App.Components;
using Ohmstead.App.Screens.Drawing;
using Ohmstead.App.Screens.Readings;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The circuit on the screen: what is laid over it and what a tap tells.</summary>
public class DrawingScreenTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private static IRenderedComponent<UnitDrawing> Show(ScreenBench bench)
    {
        var screen = bench.Context.Render<UnitDrawing>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForElement(".circuit-pane svg", Patience);
        return screen;
    }

    private static Task Tap(IRenderedComponent<IComponent> screen, string id) =>
        screen.InvokeAsync(() => screen.FindComponent<CircuitView>().Instance.TapAsync(id));

    [Fact]
    public async Task A_tap_on_a_part_tells_what_is_known_of_it()
    {
        await using var bench = await ScreenBench.OpenAsync([
            .. ScreenBench.ColdGates,
            ScreenBench.Read("lamp-60", 106),
            ScreenBench.Read("ohms-1", 1.6),
            ScreenBench.Read("full-1", 19.1),
            ScreenBench.Read("load-1", 14.6),
            new PhotoAdded(new string('a', 64), "the arm", "roller-1"),
        ]);
        var screen = Show(bench);
        Assert.Empty(screen.FindAll("[aria-label='What is known of it']"));
        await Tap(screen, "roller-1");
        var panel = screen.Find("[aria-label='What is known of it']");
        Assert.Contains("roller of track 1", panel.TextContent, StringComparison.Ordinal);
        Assert.Equal("the arm", panel.QuerySelector("img")!.GetAttribute("alt"));
        screen.WaitForAssertion(
            () => Assert.Contains("worn", screen.Find("[aria-label='What is known of it']").TextContent, StringComparison.Ordinal),
            Patience
        );
        Assert.NotEmpty(screen.FindAll(".circuit-pane [data-element='roller-1'] rect[class*='d-suspect']"));
    }

    [Fact]
    public async Task A_terminal_tells_its_readings_with_what_was_read()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.ColdGates);
        var screen = Show(bench);
        await Tap(screen, "blade-1");
        var lines = screen.FindAll("[aria-label='What is known of it'] li.line");
        Assert.Contains(lines, l => l.TextContent.Contains("3.8 Ω", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.TextContent.Contains("not read", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Without_a_finger_parts_are_chosen_from_a_list()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench);
        await screen.DoAsync(() => screen.Find("#part").ChangeAsync(new ChangeEventArgs { Value = "main" }));
        Assert.Contains("58", screen.Find("[aria-label='What is known of it']").TextContent, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("[aria-label='What is known of it'] button").ClickAsync(new()));
        Assert.Empty(screen.FindAll("[aria-label='What is known of it']"));
    }

    [Fact]
    public async Task Values_read_stand_between_their_terminals_and_go_when_not_wanted()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.ColdGates);
        var screen = Show(bench);
        Assert.Contains("3.8 Ω", screen.Find(".circuit-pane").TextContent, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("#laid").ChangeAsync(new ChangeEventArgs { Value = "-" }));
        screen.WaitForAssertion(
            () => Assert.DoesNotContain("3.8 Ω", screen.Find(".circuit-pane").TextContent, StringComparison.Ordinal),
            Patience
        );
    }

    [Fact]
    public async Task A_reading_shows_its_probes_on_the_circuit_and_looks_there()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<OneReading>(p => p.Add(s => s.Id, ScreenBench.UnitId).Add(s => s.ReadingId, "blades"));
        var pane = screen.WaitForElement(".circuit-pane svg", Patience);
        Assert.Equal(2, pane.QuerySelectorAll(".d-probe-red, .d-probe-black").Length);
        var circuit = screen.Find(".circuit");
        Assert.NotEqual(circuit.GetAttribute("data-whole"), pane.GetAttribute("viewBox"));
        Assert.StartsWith("blade-1 ", circuit.GetAttribute("data-look"), StringComparison.Ordinal);
        Assert.NotEmpty(pane.QuerySelectorAll("[data-element='primary'].measured"));
        Assert.NotEmpty(pane.QuerySelectorAll("[data-element='main'].hushed"));
    }

    [Fact]
    public async Task On_a_phone_the_path_stands_upright_from_lead_to_lead()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<OneReading>(p => p.Add(s => s.Id, ScreenBench.UnitId).Add(s => s.ReadingId, "blades"));
        screen.WaitForElement(".ladder", Patience);
        var rungs = screen.FindAll(".rung");
        Assert.Equal("red", rungs[0].QuerySelector(".flag")!.TextContent);
        Assert.Equal("black", rungs[^1].QuerySelector(".flag")!.TextContent);
        // Cord, joint, primary, joint, cord between the two blades.
        Assert.Equal(7, rungs.Count);
        Assert.Equal("Primary", rungs[3].QuerySelector("b")!.TextContent);
    }

    [Fact]
    public async Task A_lane_of_the_drawing_is_chosen_by_its_post()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench);
        await screen.DoAsync(() =>
            screen.FindAll("[aria-label='Which lane'] button").First(b => b.TextContent == "14 V post").ClickAsync()
        );
        screen.WaitForAssertion(
            () =>
            {
                var names = screen.FindAll(".rung b").Select(b => b.TextContent).ToList();
                Assert.Equal(("14 V post", "Post 0"), (names[0], names[^1]));
                Assert.DoesNotContain("Breaker of track 1", names);
            },
            Patience
        );
        await screen.DoAsync(() => screen.FindAll("[aria-label='Which lane'] button").First(b => b.TextContent == "Whole").ClickAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".ladder")), Patience);
    }
}
