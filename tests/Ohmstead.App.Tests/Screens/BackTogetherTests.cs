using Bunit;
using Ohmstead.App.Screens.Apart;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Putting a unit together: how it was, and how each step goes back.</summary>
public class BackTogetherTests
{
    private static IRenderedComponent<BackTogether> Show(ScreenBench bench)
    {
        var screen = bench.Context.Render<BackTogether>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForElement("#step", TimeSpan.FromSeconds(30));
        return screen;
    }

    [Fact]
    public async Task A_step_shows_its_photo_from_before_and_the_pieces_that_were_counted()
    {
        await using var bench = await ScreenBench.OpenAsync(
            new PhotoAdded(new string('a', 64), "the knob", "knob-1"),
            new PhotoAdded(new string('b', 64), "another thing", "knob-2"),
            new TakenOff("knob-1", 4, 3, ""),
            new PhotoAdded(new string('c', 64), "the bare shaft", "knob-1")
        );
        var screen = Show(bench);
        var photo = Assert.Single(screen.FindAll(".as-found img"));
        Assert.Contains(new string('a', 64), photo.GetAttribute("src"), StringComparison.Ordinal);
        Assert.Equal("the knob, as it was before it came off", photo.GetAttribute("alt"));
        var how = screen.FindAll(".how div").ToDictionary(d => d.QuerySelector("dt")!.TextContent, d => d.QuerySelector("dd")!.TextContent);
        Assert.Equal("3 pieces counted when it came off, in cup 4", how["Pieces"]);
        Assert.Equal("hex key for the set screw", how["Tool"]);
        Assert.Contains("flat of the shaft", how["Trick"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_photo_it_says_so()
    {
        await using var bench = await ScreenBench.OpenAsync(new TakenOff("knob-1", 4, 3, ""));
        Assert.Contains("No photo was taken before it came off.", Show(bench).Markup, StringComparison.Ordinal);
    }
}
