using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Background;
using Ohmstead.App.Components;
using Ohmstead.App.Demo;
using Ohmstead.App.Papers;
using Ohmstead.App.Screens.Apart;
using Ohmstead.App.Screens.Readings;
using Ohmstead.App.Screens.Units;
using Ohmstead.App.Screens.Untyped;
using Ohmstead.App.Screens.Wiring;
using Ohmstead.App.Tests.Papers;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Untyped;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Tests.Screens;

/// <summary>A unit whose type is not known, from its posts to its papers, and on to its type.</summary>
public sealed class UntypedScreensTests : IAsyncLifetime
{
    private static readonly Guid Id = new(5, 0, 0, new byte[8]);
    private OpenWorkshop workshop = null!;

    public async ValueTask InitializeAsync()
    {
        workshop = await OpenWorkshop.OpenAsync();
        workshop.Screens.Services.AddSingleton(new SiteOptions(0, IsOnLan: false, IsDemo: false));
        await workshop.Bench.EnterAsync(Id, 0, "bench", new TakenIn("7", "", "", "dead"), new PlateRead(117, 110));
    }

    public ValueTask DisposeAsync() => workshop.DisposeAsync();

    private IRenderedComponent<T> Show<T>()
        where T : UnitScreen => workshop.Screens.Render<T>(p => p.Add(s => s.Id, Id));

    private string At => new Uri(workshop.Screens.Services.GetRequiredService<NavigationManager>().Uri).AbsolutePath;

    [Fact]
    public async Task Posts_wires_and_what_comes_off_are_named_on_the_way()
    {
        var posts = Show<UnitTerminals>();
        await posts.DoAsync(() => posts.Find("#name").ChangeAsync("A"));
        await posts.DoAsync(() => posts.Find("form").SubmitAsync());
        posts.WaitForAssertion(() => Assert.Contains("Post", posts.Find("li").TextContent, StringComparison.Ordinal));
        await posts.DoAsync(() => posts.Find("#watts").ChangeAsync("0"));
        posts.WaitForAssertion(() => Assert.NotEmpty(posts.FindAll("[role=alert]")));

        var wiring = Show<UnitWiring>();
        await wiring.DoAsync(() => wiring.Find("#new-name").ChangeAsync("brass lug"));
        await wiring.DoAsync(() => wiring.FindAll("button.can").First(b => b.TextContent == "Add this place").ClickAsync());
        await wiring.DoAsync(() => wiring.Find("#fresh").ChangeAsync("red"));
        await wiring.DoAsync(() => wiring.Find("button.do").ClickAsync());
        wiring.WaitForAssertion(() => Assert.Contains("Red wire", wiring.Find("li.taken").TextContent, StringComparison.Ordinal));

        var apart = Show<TakeApartOrder>();
        await apart.DoAsync(() => apart.Find("#what").ChangeAsync("cover"));
        await apart.DoAsync(() => apart.Find("#cup").ChangeAsync("3"));
        await apart.DoAsync(() => apart.Find("form").SubmitAsync());
        apart.WaitForAssertion(() => Assert.Contains("cover", apart.Find("ol").TextContent, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task Every_paper_is_made_without_a_type_says_not_to_plug_it_in_and_shows_no_id()
    {
        await workshop.Bench.EnterAsync(
            Id,
            2,
            "bench",
            [
                .. NamedPosts.Read("A U"),
                new ReadingEntered(UntypedIds.Blades, Shown.Number(6.2), BenchState.AsSheet) { Title = "Between the plug blades" },
                new ReadingEntered("untyped-blades-case", Shown.OverRange, BenchState.AsSheet),
                new ReadingEntered("untyped-insulation-case", Shown.Number(300e6), BenchState.AsSheet),
                new ReadingEntered("untyped-insulation-posts", Shown.Number(300e6), BenchState.AsSheet),
                new ReadingEntered("untyped-blades-untyped-post-1", Shown.OverRange, BenchState.AsSheet),
                new ReadingEntered("untyped-blades-untyped-post-2", Shown.OverRange, BenchState.AsSheet),
            ]
        );
        foreach (var paper in (string[])[ServiceRecord.Id, BenchSheet.Id])
        {
            var text = Pdf.Text((await PaperFiles.MakeAsync(workshop.Bench, Id, paper, usualOnly: false))!);
            Assert.DoesNotContain("untyped", text, StringComparison.OrdinalIgnoreCase);
            if (paper == ServiceRecord.Id)
                Assert.Contains("Do not plug this unit in", text, StringComparison.OrdinalIgnoreCase);
        }
    }

    /// <summary>Where a wire goes is what the record is for: each joint names the other end, and a wire whose other end nobody saw is asked for.</summary>
    [Fact]
    public async Task A_joint_says_where_its_wires_go_and_is_pinned_on_its_photo()
    {
        const string photo = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef";
        await workshop.Bench.EnterAsync(
            Id,
            2,
            "bench",
            [
                .. NamedPosts.Read("A"),
                new JointSeen(
                    WiringState.Found,
                    "untyped-post-1",
                    [new("untyped-wire-1.from", "red"), new("untyped-wire-2.from", "black")],
                    "",
                    0,
                    0
                ),
                new TerminalNamed("untyped-lug-1", "brass lug", IsPost: false),
                new JointSeen(WiringState.Found, "untyped-lug-1", [new("untyped-wire-1.to", "red")], "", 0, 0),
                new PhotoAdded(photo, "", "untyped-lug-1"),
            ]
        );
        var wiring = Show<UnitWiring>();
        wiring.WaitForElement("#new-name");
        var joints = wiring.FindAll("#list ~ ol li").Select(l => l.TextContent).ToList();
        Assert.Equal(["Post ARed wire to brass lug; black wire, other end not recorded yet", "Brass lugRed wire to post A"], joints);
        Assert.Contains(
            "1 wire with one end recorded. Find the other end: black wire from post A.",
            wiring.Markup,
            StringComparison.Ordinal
        );

        await wiring.DoAsync(() => wiring.FindAll("input[name=terminal]")[1].ChangeAsync(true));
        wiring.WaitForElement(".pinnable img");
        await wiring.DoAsync(() => wiring.Find("#across").InputAsync("25"));
        await wiring.DoAsync(() => wiring.Find("#down").InputAsync("75"));
        await wiring.DoAsync(() => wiring.Find("button.do").ClickAsync());
        wiring.WaitForAssertion(() => Assert.Empty(wiring.FindAll(".pinnable")));
        var seen = (await workshop.Bench.ReadAsync(Id))!.All<JointSeen>().Last().Fact;
        Assert.Equal(("untyped-lug-1", photo, 0.25, 0.75), (seen.Terminal, seen.Photo, seen.X, seen.Y));
        Assert.Equal(["untyped-wire-1.to"], seen.Ends.Select(e => e.Id));
    }

    [Fact]
    public async Task A_failed_cold_check_stands_open_on_the_units_page()
    {
        await workshop.Bench.EnterAsync(
            Id,
            2,
            "bench",
            new ReadingEntered("untyped-insulation-case", Shown.Number(20e3), BenchState.AsSheet)
        );
        var page = Show<UnitOverview>();
        page.WaitForAssertion(() =>
            Assert.Contains(
                page.FindAll("p.warning"),
                w =>
                    w.TextContent.Contains(
                        "Mains is locked. Both blades to the case, 500 V. 20 kΩ: failed the usual limit, at least 2.00 MΩ",
                        StringComparison.Ordinal
                    )
            )
        );
        Assert.DoesNotContain("no faults found", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Its_type_is_named_and_all_of_it_is_carried_over()
    {
        await CarriedTypes.KeepAsync(workshop.Bench, "solo-110");
        await workshop.Bench.EnterAsync(
            Id,
            2,
            "bench",
            new ReadingEntered(UntypedIds.Blades, Shown.Number(6.2), BenchState.AsSheet) { Title = "Between the plug blades" }
        );
        var screen = Show<NameType>();
        screen.WaitForElement("#type option[value='solo-110']");
        await screen.DoAsync(() => screen.Find("#type").ChangeAsync("solo-110"));
        screen.WaitForAssertion(() => Assert.Contains("becomes “Between the plug blades”", screen.Markup, StringComparison.Ordinal));
        await screen.DoAsync(() => screen.Find("button.do").ClickAsync());
        screen.WaitForAssertion(() => Assert.Equal($"/units/{Id}", At));
        var unit = (await workshop.Bench.ReadAsync(Id))!;
        Assert.Equal(("solo-110", "blades"), (unit.Card.SheetId, unit.CurrentReadings.Single().Fact.ReadingId));
        Assert.False(CarryOver.IsOpen(unit));
    }
}
