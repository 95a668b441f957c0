using Bunit;
using Ohmstead.App.Screens.Owner;
using Ohmstead.App.Screens.Units;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>This unit beside the shop's own, and beside another on one layout.</summary>
public class OwnerScreensTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static async Task<ScreenBench> WithSoundAsync(int count, params Fact[] facts)
    {
        var bench = await ScreenBench.OpenAsync(facts);
        for (var n = 0; n < count; n++)
            await bench.Bench.EnterAsync(
                new Guid(20 + n, 0, 0, new byte[8]),
                0,
                "bench",
                new TakenIn(FormattableString.Invariant($"S-{n}"), "twin-175", n == 0 ? "an owner" : "", ""),
                ScreenBench.Read("blades", 3.8 + (0.01 * n)),
                new Returned(ReturnManner.Working, "A. B.")
            );
        return bench;
    }

    [Fact]
    public async Task A_unit_is_compared_with_the_shops_own_and_known_by_its_owner()
    {
        await using var bench = await WithSoundAsync(4, ScreenBench.Read("blades", 9.5));
        var screen = bench.Context.Render<History>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForElement(".worth", Patience);
        Assert.Contains("4 units of this type went back as working.", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("Unusual: ", screen.Find(".worth").TextContent, StringComparison.Ordinal);
        var before = screen.Find(".beside").TextContent;
        Assert.Contains("then 3.8 Ω", before, StringComparison.Ordinal);
        Assert.Contains("now 9.5 Ω", before, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_of_a_type_are_too_few()
    {
        await using var bench = await WithSoundAsync(2, ScreenBench.Read("blades", 9.5));
        var screen = bench.Context.Render<History>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForAssertion(() => Assert.Contains("too few of this type", screen.Markup, StringComparison.Ordinal), Patience);
        // One sentence says it; a row for each reading would only repeat it.
        Assert.Empty(screen.FindAll(".worth"));
        Assert.DoesNotContain("nusual:", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_takes_in_a_unit_with_a_known_owner_is_told_that_it_was_here()
    {
        await using var bench = await WithSoundAsync(1);
        var screen = bench.Context.Render<NewUnit>();
        screen.WaitForElement("#owner");
        Assert.DoesNotContain("It may have been here before.", screen.Markup, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("#owner").ChangeAsync("An Owner"));
        screen.WaitForAssertion(() => Assert.Contains("It may have been here before.", screen.Markup, StringComparison.Ordinal));
        Assert.Equal("S-0", screen.Find(".notice .tag").TextContent);
    }

    [Fact]
    public async Task The_bare_plug_is_said_before_anything_is_typed_and_the_cord_to_turn_after_it()
    {
        await using var locked = await ScreenBench.OpenAsync();
        var shut = locked.Context.Render<TwoUnits>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        shut.WaitForAssertion(() => Assert.Contains("Do not plug it in for this.", shut.Markup, StringComparison.Ordinal));
        Assert.Empty(shut.FindAll("form"));
        await using var bench = await ScreenBench.OpenAsync([
            .. ScreenBench.NothingLive,
            .. ScreenBench.ColdGates,
            ScreenBench.Read("lamp-60", 110),
        ]);
        var screen = bench.Context.Render<TwoUnits>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForAssertion(() =>
            Assert.Contains("A bare plug can kill.", screen.Find("section").TextContent, StringComparison.Ordinal)
        );
        await screen.DoAsync(() => screen.Find("form").SubmitAsync());
        screen.WaitForAssertion(() => Assert.Equal("Say what the other unit is called.", screen.Find("[role=alert]").TextContent));
        await screen.DoAsync(() => screen.Find("#other").ChangeAsync("F-10"));
        await screen.DoAsync(() => screen.Find("#va").ChangeAsync("18.2"));
        await screen.DoAsync(() => screen.Find("#vb").ChangeAsync("17.9"));
        await screen.DoAsync(() => screen.Find("#vab").ChangeAsync("36"));
        await screen.DoAsync(() => screen.Find("#line").ChangeAsync("120"));
        await screen.DoAsync(() => screen.Find("form").SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("Opposed", screen.Markup, StringComparison.Ordinal));
        Assert.Contains("Turn the plug of F-10", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("carry up to 122 V", screen.Find("section").TextContent, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.FindAll("button").Single(b => b.TextContent == "Write it in the log").ClickAsync(new()));
        Assert.Contains(
            "opposed. Turn the plug of F-10",
            Assert.Single((await bench.UnitAsync()).All<Noted>()).Fact.Words,
            StringComparison.Ordinal
        );
    }
}
