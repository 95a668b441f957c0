using Bunit;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Findings;
using Ohmstead.App.Screens.Papers;
using Ohmstead.App.Screens.Readings;
using Ohmstead.App.Screens.Units;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Tests.Screens;

/// <summary>What a diagnosis doubts reaches every screen: findings, the reading itself, the quick list, the unit's page and its return.</summary>
public class DoubtScreenTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private static readonly Fact[] Passed = [.. ScreenBench.NothingLive, .. ScreenBench.ColdGates, ScreenBench.Read("lamp-60", 106)];

    private static readonly Doubt Heat = new(DoubtAbout.Internal, 0.9, 11.2, [], []);
    private static readonly Doubt Leads = new(DoubtAbout.Leads, 0.9, 0.31, ["ohms-1"], []);

    /// <summary>A diagnosis that takes these readings for ten times too high as long as they read so.</summary>
    private static Func<UnitReadings, DiagnosisResult, DiagnosisResult> Slips(params (string Id, double Value)[] slips) =>
        (readings, result) =>
            result with
            {
                Slips =
                [
                    .. slips
                        .Where(s => readings.Readings.LastOrDefault(r => r.Spec.Id == s.Id)?.Value == s.Value)
                        .Select(s => new ProbableSlip(s.Id, SlipKind.TimesTen, null, s.Value / 10, 0.95)),
                ],
            };

    private static IRenderedComponent<T> Show<T>(ScreenBench bench, string? reading = null)
        where T : Ohmstead.App.Components.UnitScreen =>
        bench.Context.Render<T>(p =>
        {
            p.Add(s => s.Id, ScreenBench.UnitId);
            if (reading is not null)
                p.TryAdd(nameof(OneReading.ReadingId), reading);
        });

    private static void Sees<T>(IRenderedComponent<T> screen, string words)
        where T : Microsoft.AspNetCore.Components.IComponent =>
        screen.WaitForAssertion(() => Assert.Contains(words, screen.Markup.Replace('\u00a0', ' '), StringComparison.Ordinal), Patience);

    [Fact]
    public async Task Findings_begin_with_the_doubts_and_the_first_button_settles_the_first()
    {
        await using var bench = await ScreenBench.DoubtingAsync(
            (_, r) => r with { Doubts = [Heat, Leads] },
            [.. Passed, ScreenBench.Read("load-1", 14.6)]
        );
        var screen = Show<UnitFindings>(bench);
        screen.WaitForElement("section.caution-box", Patience);
        var boxes = screen.FindAll("section.caution-box").Select(b => b.TextContent.Replace('\u00a0', ' ')).ToList();
        Assert.Contains("Your test leads were probably not taken off: about 0.31 Ω", boxes[0], StringComparison.Ordinal);
        Assert.Contains("Findings count less until then.", boxes[0], StringComparison.Ordinal);
        Assert.Contains("This unit makes about 11 W more heat than it should", boxes[1], StringComparison.Ordinal);
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(screen.Markup, "count less"));
        var act = Assert.Single(screen.FindAll(".do"));
        Assert.Equal(
            ("Enter the test leads", $"/shop/meters?meter={(await bench.Bench.ShopAsync()).Meters[0].Id}"),
            (act.TextContent.Trim(), act.GetAttribute("href"))
        );
        Assert.True(
            screen.Markup.IndexOf("caution-box", StringComparison.Ordinal)
                < screen.Markup.IndexOf("Likely faults", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_slip_among_the_findings_is_corrected_by_one_tap()
    {
        await using var bench = await ScreenBench.DoubtingAsync(Slips(("load-1", 177)), [.. Passed, ScreenBench.Read("load-1", 177)]);
        var screen = Show<UnitFindings>(bench);
        Sees(screen, "Ten times too high? 177 V where 17.7 V belongs.");
        // Said once: as a slip, not as the best next reading besides.
        Assert.DoesNotContain("Read it again.", screen.Markup.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.StartsWith("Read again", Assert.Single(screen.FindAll(".do")).TextContent.Trim(), StringComparison.Ordinal);
        await screen.DoAsync(() =>
            screen.FindAll("button").First(b => b.TextContent.Replace('\u00a0', ' ').Trim() == "Yes, 17.7 V").ClickAsync()
        );
        screen.WaitForAssertion(() => Assert.DoesNotContain("Ten times too high?", screen.Markup, StringComparison.Ordinal), Patience);
        Assert.Contains("load-1 17.7 Value", await bench.StandingAsync());
    }

    /// <summary>On the reading itself it has failed, whatever the reason; among the findings the slip is asked about.</summary>
    [Fact]
    public async Task A_slip_by_which_a_check_fails_is_asked_about_among_the_findings()
    {
        await using var bench = await ScreenBench.DoubtingAsync(Slips(("blades", 38)), [.. Passed, ScreenBench.Read("blades", 38)]);
        var screen = Show<UnitFindings>(bench);
        Sees(screen, "Ten times too high? 38 Ω where 3.8 Ω belongs.");
    }

    [Fact]
    public async Task A_slip_that_the_other_readings_show_is_asked_about_where_the_hand_is_and_changed_only_by_it()
    {
        await using var bench = await ScreenBench.DoubtingAsync(Slips(("load-1", 177)), [.. Passed, ScreenBench.Read("load-1", 177)]);
        var screen = Show<OneReading>(bench, "full-1");
        Sees(screen, "Possible slip: Post 1, full throttle, 4 Ω load.");
        Assert.Contains("load-1 177 Value", await bench.StandingAsync());
        await screen.DoAsync(() => screen.FindAll(".slip-note button").First(b => b.TextContent.Trim() == "No, it is right").ClickAsync());
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".slip-note")), Patience);
        Assert.Contains("load-1 177 Value", await bench.StandingAsync());
        var list = Show<Round>(bench);
        list.WaitForElement(".slip-note", Patience);
    }

    [Fact]
    public async Task A_doubted_check_locks_the_open_mains_reading_and_unlocks_it_when_it_was_read_again()
    {
        await using var bench = await ScreenBench.DoubtingAsync(Slips(("blades", 3.9)), Passed);
        var mains = Show<OneReading>(bench, "full-1");
        mains.WaitForElement("#entry", Patience);
        await bench.Bench.EnterAsync(ScreenBench.UnitId, (await bench.UnitAsync()).LastNumber, "phone", ScreenBench.Read("blades", 3.9));
        Sees(mains, "Between the plug blades. 3.9 Ω: possible slip, ten times too high.");
        Assert.Empty(mains.FindAll("#entry"));
        await bench.Bench.EnterAsync(ScreenBench.UnitId, (await bench.UnitAsync()).LastNumber, "phone", ScreenBench.Read("blades", 3.8));
        mains.WaitForElement("#entry", Patience);
    }

    [Fact]
    public async Task After_it_was_typed_a_doubted_reading_asks_to_be_read_again_before_the_next()
    {
        await using var bench = await ScreenBench.DoubtingAsync(Slips(("blades", 3.9)), Passed);
        var screen = Show<OneReading>(bench, "blades");
        screen.WaitForElement("#entry", Patience);
        await screen.DoAsync(() => screen.Find("#entry").InputAsync("3.9"));
        await screen.DoAsync(() => screen.Find("form.pad").SubmitAsync());
        Sees(screen, "Read it again. It unlocks nothing until then.");
        var act = Assert.Single(screen.FindAll(".do"));
        Assert.Equal("Read it again", act.TextContent.Trim());
        await screen.DoAsync(() => screen.Find("button.do").ClickAsync());
        screen.WaitForElement("#entry", Patience);
    }

    [Fact]
    public async Task The_unit_its_quick_list_and_its_return_say_that_the_check_is_to_be_read_again()
    {
        await using var bench = await ScreenBench.DoubtingAsync(
            (readings, result) => Slips(("blades", 3.8))(readings, result) with { Doubts = [Heat] },
            [.. Passed, new StageClosed(Stage.LookOver, true, "")]
        );
        var unit = Show<UnitOverview>(bench);
        Sees(unit, "3.8 Ω: possible slip, ten times too high. Read it again.");
        Sees(unit, "Read again: Between the plug blades");
        Sees(unit, "This unit makes about 11 W more heat than it should. <a");
        Sees(Show<Round>(bench), "possible slip, ten times too high");
        var back = Show<ReturnUnit>(bench);
        Sees(back, "To be read again. It read 3.8 Ω: possible slip, ten times too high.");
        Sees(back, "This unit makes about 11 W more heat than it should");
        Assert.Empty(back.FindAll("button.way.do"));
    }

    [Fact]
    public async Task After_a_new_start_a_doubted_check_opens_nothing_before_anything_is_worked_out()
    {
        await using var bench = await ScreenBench.DoubtingAsync(Slips(("blades", 3.8)), Passed);
        Sees(Show<OneReading>(bench, "full-1"), "possible slip, ten times too high");
        await bench.RestartAsync();
        var (unit, shop) = (await bench.UnitAsync(), await bench.Bench.ShopAsync());
        var model = new UnitModel(OwnSheet.OnBench(unit, (await bench.Bench.SheetOfAsync(unit))!, shop).Value!);
        var offer = ReadingOffer.All(unit, model, BenchReadings.Of(unit, model, shop).Value!, shop).Single(o => o.Spec.Id == "full-1");
        Assert.Equal(
            ("Between the plug blades. 3.8 Ω: possible slip, ten times too high", "Read it again."),
            (Assert.Single(offer.Locks).What.Replace('\u00a0', ' '), offer.Locks[0].Act)
        );
        Assert.Null(ReadingEntry.Enter(offer, Shown.Number(17.3), BenchState.AsSheet).Fact);
    }

    [Fact]
    public async Task Where_the_search_fails_the_lock_says_so_and_what_to_do_and_asks_no_patience()
    {
        var searches = 0;
        await using var bench = await ScreenBench.DoubtingAsync(
            (readings, result) =>
                Interlocked.Increment(ref searches) > 0 && readings.Readings.Last(r => r.Spec.Id == "blades").Value == 3.7
                    ? throw new InvalidOperationException("as a test says")
                    : Slips(("blades", 3.8))(readings, result),
            Passed
        );
        var mains = Show<OneReading>(bench, "full-1");
        Sees(mains, "possible slip, ten times too high");
        await bench.Bench.EnterAsync(ScreenBench.UnitId, (await bench.UnitAsync()).LastNumber, "phone", ScreenBench.Read("blades", 3.7));
        Sees(
            mains,
            "3.7 Ω: read again, and not judged yet. What is probably wrong could not be worked out. Readings are kept. Open the findings again to try once more."
        );
        Assert.DoesNotContain("Wait a moment", mains.Markup, StringComparison.Ordinal);
        // A screen asks once for an entry: its own word of trouble is no reason to ask again.
        Assert.InRange(searches, 2, 4);
    }

    [Fact]
    public async Task Return_and_paperwork_list_every_doubt_with_what_to_do()
    {
        await using var bench = await ScreenBench.DoubtingAsync((_, r) => r with { Doubts = [Leads] }, Passed);
        foreach (
            var screen in new IRenderedComponent<Ohmstead.App.Components.UnitScreen>[] { Show<ReturnUnit>(bench), Show<UnitPapers>(bench) }
        )
        {
            Sees(screen, "Your test leads were probably not taken off: about 0.31 Ω");
            Sees(screen, "Touch the leads together and read the ohms.");
        }
        Sees(Show<ReturnUnit>(bench), ", 1 thing is in doubt");
        var findings = Show<UnitFindings>(bench);
        Sees(findings, "Apart from that, nothing read so far points to a listed fault.");
    }

    [Fact]
    public async Task A_reading_that_is_no_slip_is_not_called_one_among_the_findings()
    {
        await using var bench = await ScreenBench.DoubtingAsync(
            (_, r) => r with { Unexplained = ["load-1"] },
            [.. Passed, ScreenBench.Read("load-1", 14.6)]
        );
        var screen = Show<UnitFindings>(bench);
        Sees(screen, "One reading does not fit the rest");
        Assert.DoesNotContain("Possible slip", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Leads_entered_in_the_shop_ask_the_diagnosis_again()
    {
        await using var bench = await ScreenBench.DoubtingAsync(
            (readings, r) => r with { Doubts = readings.Meter.For(Electrical.TypeSheets.Quantity.Ohms).LeadOhms == 0.3 ? [] : [Leads] },
            Passed
        );
        var screen = Show<UnitFindings>(bench);
        Sees(screen, "Your test leads were probably not taken off");
        await bench.Bench.EditShopAsync(shop => TestLeads.Known(shop, shop.Meters[0].Id, new MeterAnswer(0.3, 0.8, 0.05)));
        screen.WaitForAssertion(() => Assert.DoesNotContain("test leads were probably", screen.Markup, StringComparison.Ordinal), Patience);
    }
}
