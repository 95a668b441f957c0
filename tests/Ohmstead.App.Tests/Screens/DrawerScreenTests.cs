using Bunit;
using Ohmstead.App.Components;
using Ohmstead.App.Screens.Bins;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The drawer's screens: what is typed there is kept, and what goes into a unit comes out of its bin.</summary>
public class DrawerScreenTests
{
    private static readonly Guid Rollers = new(21, 0, 0, new byte[8]);
    private static readonly Guid Lamps = new(22, 0, 0, new byte[8]);

    private static async Task<ScreenBench> FilledAsync(params Fact[] facts)
    {
        var screens = await ScreenBench.OpenAsync(facts);
        await screens.Bench.Drawer.EnterAsync(
            new BinSaid(Rollers)
            {
                Tag = "C1",
                Name = "Roller, carbon",
                Part = "roller",
                Price = 5.1m,
                LeadDays = 7,
                PerYear = 1,
            },
            new BinCounted(Rollers, 2),
            new BinSaid(Lamps)
            {
                Tag = "A2",
                Name = "Pilot lamp 14 V",
                Price = 1.6m,
                LeadDays = 35,
                PerYear = 24,
            },
            new BinCounted(Lamps, 2)
        );
        return screens;
    }

    private static async Task<Bin> BinAsync(ScreenBench screens, Guid bin) => (await screens.Bench.Drawer.ReadAsync()).Find(bin)!;

    [Fact]
    public async Task A_bin_is_added_with_its_count_and_stands_on_the_page()
    {
        await using var screens = await ScreenBench.OpenAsync();
        var page = screens.Context.Render<AllBins>();
        page.WaitForElement("#bin-name");
        await page.DoAsync(() => page.Find("#bin-name").InputAsync("Roller, carbon"));
        await page.DoAsync(() => page.Find("#bin-tag").InputAsync("C1"));
        await page.DoAsync(() => page.Find("#bin-count").InputAsync("six"));
        await page.DoAsync(() => page.Find("details form").SubmitAsync());
        page.WaitForAssertion(() =>
            Assert.Contains("“six” is not a number", page.Find("[role=alert]").TextContent, StringComparison.Ordinal)
        );
        await page.DoAsync(() => page.Find("#bin-count").InputAsync("6"));
        await page.DoAsync(() => page.Find("details form").SubmitAsync());
        page.WaitForAssertion(() => Assert.Equal("6", page.Find("a.front .front-count b").TextContent));
        var bin = Assert.Single((await screens.Bench.Drawer.ReadAsync()).Bins);
        Assert.Equal(("C1", "Roller, carbon", 6), (bin.Tag, bin.Name, bin.Count));
    }

    [Fact]
    public async Task What_to_order_today_is_said_with_its_reason_and_one_press_orders_it()
    {
        await using var screens = await FilledAsync();
        var page = screens.Context.Render<AllBins>();
        page.WaitForAssertion(() =>
            Assert.Contains("You use 2 a month, they take 5 weeks; 2 are left.", page.Find(".order").TextContent, StringComparison.Ordinal)
        );
        Assert.Contains("$9.60", page.Find(".order").TextContent, StringComparison.Ordinal);
        await page.DoAsync(() => page.Find(".order button").ClickAsync());
        page.WaitForAssertion(() => Assert.Contains("Nothing to order today.", page.Markup, StringComparison.Ordinal));
        Assert.Equal(6, (await BinAsync(screens, Lamps)).OnOrder);
    }

    [Fact]
    public async Task A_batch_that_came_in_is_on_the_bin_with_supplier_lot_and_date()
    {
        await using var screens = await FilledAsync();
        var page = screens.Context.Render<OneBin>(p => p.Add(b => b.Id, Rollers.ToString()));
        page.WaitForElement("#came");
        await page.DoAsync(() => page.Find("#came").ChangeAsync("4"));
        await page.DoAsync(() => page.Find("#came-from").ChangeAsync("Acme"));
        await page.DoAsync(() => page.Find("#lot").ChangeAsync("41"));
        await page.DoAsync(() => page.Find("#date").ChangeAsync("2026-11-03"));
        await page.DoAsync(() => page.FindAll("form").Single(f => f.QuerySelector("#lot") is not null).SubmitAsync());
        page.WaitForAssertion(() => Assert.Contains("Acme, lot 41, Nov 3, 2026", page.Markup, StringComparison.Ordinal));
        Assert.Equal("6", page.Find(".value").TextContent);
        await page.DoAsync(() => page.Find("#used").ChangeAsync("9"));
        await page.DoAsync(() => page.FindAll("form").Single(f => f.QuerySelector("#used") is not null).SubmitAsync());
        page.WaitForAssertion(() => Assert.Equal("Only 6 in the bin. Count it first.", page.Find("[role=alert]").TextContent));
        await page.DoAsync(() => page.Find("#count").ChangeAsync("5"));
        await page.DoAsync(() => page.FindAll("form").First(f => f.QuerySelector("#count") is not null).SubmitAsync());
        page.WaitForAssertion(() => Assert.Equal("5", page.Find(".value").TextContent));
    }

    [Fact]
    public async Task What_another_window_enters_is_shown_at_once()
    {
        await using var screens = await FilledAsync();
        var (one, other) = (screens.Context.Render<OneBin>(p => p.Add(b => b.Id, Rollers.ToString())), screens.Context.Render<AllBins>());
        other.WaitForElement("a.front");
        one.WaitForElement("#used");
        await one.DoAsync(() => one.FindAll("form").Single(f => f.QuerySelector("#used") is not null).SubmitAsync());
        other.WaitForAssertion(() => Assert.Equal(["2", "1"], other.FindAll("a.front .front-count b").Select(b => b.TextContent)));
    }

    [Fact]
    public async Task A_kit_is_taken_out_for_a_unit_by_one_press_and_lies_beside_it()
    {
        await using var screens = await FilledAsync();
        await screens.Bench.Drawer.EnterAsync(
            new KitSaid(new Guid(31, 0, 0, new byte[8]), "Roller job", [new(Rollers, 1), new(Lamps, 2)], 0)
        );
        var page = screens.Context.Render<AllBins>();
        page.WaitForElement("#out-kit");
        await page.DoAsync(() => page.Find("#out-kit").ChangeAsync(new Guid(31, 0, 0, new byte[8]).ToString()));
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll("a.front.wanted").Count));
        await page.DoAsync(() => page.Find("button.do").ClickAsync());
        page.WaitForAssertion(() => Assert.Equal("Choose the unit that they are for.", page.Find("[role=alert]").TextContent));
        await page.DoAsync(() => page.Find("#out-unit").ChangeAsync(ScreenBench.UnitId.ToString()));
        await page.DoAsync(() => page.Find("button.do").ClickAsync());
        page.WaitForAssertion(() =>
            Assert.Contains("Beside F-9", page.Find("section[aria-labelledby=take-out]").TextContent, StringComparison.Ordinal)
        );
        Assert.Equal((1, 1), ((await BinAsync(screens, Rollers)).Count, (await BinAsync(screens, Rollers)).SetAside));
        var unit = await screens.UnitAsync();
        var parts = screens.Context.Render<UnitParts>(p => p.Add(s => s.Unit, unit).Add(s => s.Sheet, null));
        parts.WaitForAssertion(() => Assert.Contains("1 × Roller, carbon; 2 × Pilot lamp 14 V", parts.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_batch_is_chosen_with_the_repair_and_the_unit_is_listed_at_the_bin_and_to_be_called()
    {
        await using var screens = await FilledAsync();
        await screens.Bench.Drawer.EnterAsync(new PartsReceived(Rollers, 4, "Acme", "41", new DateOnly(2026, 11, 3)));
        var sheet = (await screens.Bench.SheetAsync("twin-175"))!;
        FromDrawer? chosen = null;
        var choice = screens.Context.Render<FromTheDrawer>(p =>
            p.Add(c => c.Unit, ScreenBench.UnitId)
                .Add(c => c.Element, "roller-1")
                .Add(c => c.Sheet, sheet)
                .Add(c => c.Key, "k")
                .Add(c => c.Chosen, c => chosen = c.On(new PartChanged("roller-1", PartChange.Renewed, null, "")).From)
        );
        choice.WaitForElement("select");
        Assert.Null(chosen);
        // The roller's bin comes first, each batch by itself, and those that came before any batch was written down.
        Assert.Equal(
            [
                "not from the drawer",
                "C1 Roller, carbon, Acme, lot 41: 4 left",
                "C1 Roller, carbon, batch not known: 2 left",
                "A2 Pilot lamp 14 V: 2 left",
            ],
            choice.FindAll("option").Select(o => o.TextContent)
        );
        await choice.DoAsync(() => choice.Find("select").ChangeAsync("0"));
        await choice.DoAsync(() => choice.Find("input").InputAsync("5"));
        choice.WaitForAssertion(() =>
            Assert.Equal("Roller, carbon: only 4 by the count. Count the bin first.", choice.Find("[role=alert]").TextContent)
        );
        await choice.DoAsync(() => choice.Find("input").InputAsync("1"));
        choice.WaitForAssertion(() => Assert.Empty(choice.FindAll("[role=alert]")));
        await screens.Bench.EnterAsync(
            ScreenBench.UnitId,
            1,
            "bench",
            new PartChanged("roller-1", PartChange.Renewed, null, "") { From = chosen }
        );
        var bin = screens.Context.Render<OneBin>(p => p.Add(b => b.Id, Rollers.ToString()));
        bin.WaitForAssertion(() => Assert.Equal("5", bin.Find(".value").TextContent));
        Assert.Contains("F-9", bin.Find("section[aria-labelledby=used-in]").TextContent, StringComparison.Ordinal);
        var batch = screens.Context.Render<OneBatch>(p => p.Add(b => b.Id, chosen!.Batch!.Value.ToString()));
        batch.WaitForAssertion(() =>
            Assert.Contains("an owner", batch.Find("section[aria-labelledby=to-call]").TextContent, StringComparison.Ordinal)
        );
        Assert.Contains("Nothing unusual in this batch.", batch.Markup, StringComparison.Ordinal);
        // The bin goes; whom to call stays.
        await screens.Bench.Drawer.EnterAsync(new BinSaid(Rollers) { IsGone = true });
        batch.WaitForAssertion(() => Assert.Contains("Its bin was removed.", batch.Markup, StringComparison.Ordinal));
        Assert.Contains("an owner", batch.Find("section[aria-labelledby=to-call]").TextContent, StringComparison.Ordinal);
        var batches = screens.Context.Render<AllBatches>();
        batches.WaitForAssertion(() => Assert.Contains("Acme, lot 41", batches.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_entry_is_undone_in_the_log_and_redone()
    {
        await using var screens = await FilledAsync();
        await screens.Bench.Drawer.EnterAsync(new PartsUsed(Rollers, 1, "a friend's"));
        var log = screens.Context.Render<DrawerLog>();
        log.WaitForAssertion(() => Assert.Contains("Roller, carbon: 1 used, a friend's", log.Markup, StringComparison.Ordinal));
        await log.DoAsync(() => log.Find("button[aria-label^=Undo]").ClickAsync());
        log.WaitForElement("button[aria-label^=Redo]");
        Assert.Equal(2, (await BinAsync(screens, Rollers)).Count);
        await log.DoAsync(() => log.Find("button[aria-label^=Redo]").ClickAsync());
        log.WaitForAssertion(() => Assert.Empty(log.FindAll("button[aria-label^=Redo]")));
        Assert.Equal(1, (await BinAsync(screens, Rollers)).Count);
    }

    [Fact]
    public async Task A_kit_and_a_donor_are_made_changed_and_removed()
    {
        await using var screens = await FilledAsync();
        var kits = screens.Context.Render<AllKits>();
        kits.WaitForElement("#kit-name");
        await kits.DoAsync(() => kits.Find("#kit-name").ChangeAsync("Roller job"));
        await kits.DoAsync(() => kits.Find("#more-bin").ChangeAsync(Rollers.ToString()));
        await kits.DoAsync(() => kits.Find("form").SubmitAsync());
        kits.WaitForAssertion(() => Assert.Contains("enough for 2 jobs", kits.Markup, StringComparison.Ordinal));
        await kits.DoAsync(() =>
            kits.FindAll("button").Single(b => b.TextContent.StartsWith("Remove", StringComparison.Ordinal)).ClickAsync()
        );
        kits.WaitForAssertion(() => Assert.DoesNotContain("enough for", kits.Markup, StringComparison.Ordinal));
        var donors = screens.Context.Render<AllDonors>();
        donors.WaitForElement("#donor-tag");
        await donors.DoAsync(() => donors.Find("#donor-tag").ChangeAsync("0388"));
        await donors.DoAsync(() => donors.Find("#more-bin").ChangeAsync(Rollers.ToString()));
        await donors.DoAsync(() => donors.Find("form").SubmitAsync());
        donors.WaitForAssertion(() => Assert.Contains("Unit 0388", donors.Markup, StringComparison.Ordinal));
        await donors.DoAsync(() =>
            donors.FindAll("button").Single(b => b.TextContent.StartsWith("Take one out", StringComparison.Ordinal)).ClickAsync()
        );
        donors.WaitForAssertion(() => Assert.DoesNotContain("Unit 0388", donors.Markup, StringComparison.Ordinal));
        Assert.Equal(3, (await BinAsync(screens, Rollers)).Count);
    }
}
