using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Demo;
using Ohmstead.App.Papers;
using Ohmstead.App.Screens.LookingBack;
using Ohmstead.App.Screens.Papers;
using Ohmstead.App.Screens.Units;
using Ohmstead.App.Tests.Screens;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests.Demo;

/// <summary>A practice round: faults drawn or chosen, the tool's way beside one's own, and nothing of it in the shop's papers and figures.</summary>
public class PracticeRoundTests
{
    private static BenchUnit Unit(string type, PracticeBegun begun, params Fact[] more) =>
        UnitHistory.Fold([
            .. new Fact[] { new TakenIn("1", type, PracticeTypes.Mark, ""), begun }
                .Concat(more)
                .Select((f, n) => new Entry(new Guid(n + 1, 0, 0, new byte[8]), Guid.Empty, n + 1, default, "bench", f)),
        ]);

    [Fact]
    public void Chosen_faults_are_planted_and_played()
    {
        var sheet = CarriedTypes.Of("solo-110");
        var chosen = PracticeUnit.Of(Unit("solo-110", new(7) { Faults = "primary:open shoe:worn" }), sheet)!;
        Assert.Equal(["primary:open", "shoe:worn"], chosen.Planted.Select(m => m.Name));
        // A sound primary is a few ohms; through an open one only what leaks gets.
        Assert.True(chosen.Read("blades", BenchState.AsSheet) is { Kind: ShownKind.OverRange } or { Value: > 1e5 });
        // Of a journal of another time: what its sheet does not have is left out.
        Assert.Empty(PracticeUnit.Of(Unit("solo-110", new(7) { Faults = "nothing:open" }), sheet)!.Planted);
        Assert.All(PracticeUnit.Choices(sheet), m => Assert.True(m.Percent > 0));
        Assert.Contains(PracticeUnit.Choices(sheet), m => m.Name == "shoe:worn");
    }

    /// <summary>A dead unit, its cord broken: the tool finds it in a few readings, each with its minutes, from the start and not from what was read.</summary>
    [Fact]
    [Trait("kind", "long")]
    public void The_tool_goes_its_own_way_on_the_same_unit_until_it_is_very_likely()
    {
        var sheet = CarriedTypes.Of("solo-110");
        var read = new ReadingEntered("blades", Shown.OverRange, BenchState.AsSheet);
        var fresh = PracticeUnit.Fresh(Unit("solo-110", new(7) { Faults = "cord-1:open" }, read));
        Assert.Empty(fresh.CurrentReadings);
        var played = PracticeUnit.Of(fresh, sheet)!;
        var library = new ReadingLibrary(new UnitModel(sheet));
        var told = new List<PracticeWay>();
        var tool = new ToolsWay(played.Read, r => Diagnoser.Run(library, r, new DiagnosisOptions { MostWork = 0 }));
        var (way, isFound) = tool.Go(fresh, sheet, Shop.Usual, played.Planted, told.Add);
        Assert.True(isFound);
        Assert.InRange(way.Steps.Length, 1, ToolsWay.MostReadings - 1);
        Assert.Equal(way.Steps.Select(s => s.Spec.Id).Distinct().Count(), way.Steps.Length);
        Assert.Equal(Enumerable.Range(1, way.Steps.Length), told.Select(t => t.Steps.Length));
        Assert.All(way.Steps, s => Assert.False(s.Spec.State.Source is { IsMains: true }));
    }

    [Fact]
    public async Task A_fault_is_chosen_where_a_practice_unit_is_taken_in()
    {
        await using var bench = await ScreenBench.OpenAsync();
        bench.Context.Services.GetRequiredService<NavigationManager>().NavigateTo("/units/new?type=twin-175");
        var screen = bench.Context.Render<NewUnit>();
        screen.WaitForElement("#fault-1");
        await screen.DoAsync(() => screen.Find("#fault-1").ChangeAsync("roller-1:worn"));
        await screen.DoAsync(() => screen.Find("#fault-2").ChangeAsync("disc:high-drop"));
        await screen.DoAsync(() => screen.Find("form").SubmitAsync());
        var card = (await bench.Bench.Store.CardsAsync(false, Xunit.TestContext.Current.CancellationToken)).Single(c => c.Tag != "F-9");
        var unit = (await bench.Bench.ReadAsync(card.Id))!;
        Assert.Equal("roller-1:worn disc:high-drop", unit.All<PracticeBegun>().Single().Fact.Faults);
        // What was hidden is in no list of the log.
        Assert.All(unit.Journal, e => Assert.DoesNotContain("oller", FactWords.Of(e.Fact, null), StringComparison.Ordinal));
    }

    /// <summary>A unit of the same type as real ones, read, repaired with a part of the drawer and returned: no figure of the shop knows it.</summary>
    [Fact]
    public async Task Papers_minutes_statistics_and_chances_never_see_it()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.Read("blades", 3.8));
        var id = new Guid(77, 0, 0, new byte[8]);
        await bench.Bench.EnterAsync(
            id,
            0,
            "bench",
            new TakenIn("P-1", "twin-175", PracticeTypes.Mark, ""),
            new PracticeBegun(1),
            ScreenBench.Read("blades", 9.9),
            new FindingJudged("roller-1", "worn", Judgement.Confirmed, ""),
            new PartChanged("roller-1", PartChange.Renewed, null, "") { From = new(new Guid(5, 0, 0, new byte[8]), null, 1, "Roller", "") },
            new Returned(ReturnManner.Working, "A. B.")
        );
        var (unit, real) = ((await bench.Bench.ReadAsync(id))!, await bench.UnitAsync());
        var sheet = (await bench.Bench.SheetOfAsync(unit))!;
        foreach (var row in PaperTable.All.Select(p => p.Id).Append(Label.Id))
            Assert.Null(await PaperFiles.MakeAsync(bench.Bench, id, row, usualOnly: false));
        Assert.NotNull(await PaperFiles.MakeAsync(bench.Bench, ScreenBench.UnitId, WiringSheet.Id, usualOnly: false));
        var values = KindReadings.Of(new UnitModel(sheet), [unit, real], Shop.Usual).Single(r => r.Spec.Id == "blades").Values;
        Assert.Equal(["F-9"], values.Select(v => v.Tag));
        Assert.NotEmpty(KindFit.Unfit(unit));
        Assert.Empty(FittedPart.Of(unit, sheet));
        Assert.Empty(await bench.Bench.Store.FittedAsync(Xunit.TestContext.Current.CancellationToken));
        Assert.False(OwnHistory.IsSound(unit));
        var cards = await bench.Bench.Store.CardsAsync(true, Xunit.TestContext.Current.CancellationToken);
        Assert.Empty(ComeBack.Among(cards, "P-1", PracticeTypes.Mark, "twin-175"));
        Assert.Equal(NextAction.Nothing, CardOf.Make(unit, sheet, Shop.Usual).Next.Action);
        var papers = bench.Context.Render<UnitPapers>(p => p.Add(s => s.Id, id));
        papers.WaitForAssertion(() => Assert.Contains("No paper is made of it.", papers.Markup, StringComparison.Ordinal));
        Assert.Empty(papers.FindAll("a[href*='.pdf']"));
        var year = bench.Context.Render<YearBack>();
        year.WaitForAssertion(() =>
            Assert.Contains("None yet.", year.Find("section[aria-labelledby=faults]").TextContent, StringComparison.Ordinal)
        );
    }
}
