using Bunit;
using Ohmstead.App.Screens.Owner;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>What a recording says on the screen, and what it does not prove.</summary>
public class HumScreenTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static async Task<Fact> HumAsync(ScreenBench bench, HumState state, double line2, int seed)
    {
        using var wav = new MemoryStream(MadeHum.Wav(line2, seed: seed));
        var kept = await bench.Bench.Photos.KeepRecordingAsync(
            wav,
            1 << 20,
            DateTimeOffset.UnixEpoch,
            Xunit.TestContext.Current.CancellationToken
        );
        return new HumRecorded(state, kept.Hash, kept.Hash, ["hum"]);
    }

    private static async Task<IRenderedComponent<Hum>> ShowAsync(ScreenBench bench, params Fact[] facts)
    {
        if (facts.Length > 0)
            await bench.Bench.EnterAsync(ScreenBench.UnitId, (await bench.UnitAsync()).LastNumber, "bench", facts);
        bench.Context.SetRendererInfo(new("Server", true));
        return bench.Context.Render<Hum>(p => p.Add(s => s.Id, ScreenBench.UnitId));
    }

    [Fact]
    public async Task Nothing_is_said_before_a_recording_is_there_and_the_three_are_asked_for()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = await ShowAsync(bench);
        screen.WaitForAssertion(() =>
            Assert.Equal(["idle", "loaded", "lifted"], screen.FindAll("input[data-hum]").Select(i => i.GetAttribute("data-as")!))
        );
        Assert.DoesNotContain("What is heard", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("Mains is locked until", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Three_recordings_are_laid_over_one_another_and_compared_with_the_first()
    {
        await using var bench = await ScreenBench.OpenAsync();
        // A quarter of the height is 12 dB less: much quieter with the rollers lifted. The load changes nothing.
        var screen = await ShowAsync(
            bench,
            await HumAsync(bench, HumState.Idle, 8000, 1),
            await HumAsync(bench, HumState.Lifted, 2000, 2),
            await HumAsync(bench, HumState.Loaded, 8000, 3)
        );
        screen.WaitForElement(".hum", Patience);
        Assert.Equal(3, screen.FindAll(".hum > svg path.line").Count);
        Assert.Equal(["60", "120", "240", "360", "480", "600", "720"], screen.FindAll(".hum text").Select(t => t.TextContent));
        Assert.Contains("Rollers lifted, beside no load: −12.", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("A roller may bridge a turn: read the watts.", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("The same, within what a phone hears.", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("What it does not prove:", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("Watts do.", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("--as idle,loaded,lifted", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_recording_that_is_gone_is_asked_for_again()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = await ShowAsync(bench, new HumRecorded(HumState.Idle, new string('a', 64), new string('a', 64), ["hum"]));
        screen.WaitForAssertion(
            () => Assert.Contains("the recording is missing or damaged. Choose it again.", screen.Markup, StringComparison.Ordinal),
            Patience
        );
    }
}
