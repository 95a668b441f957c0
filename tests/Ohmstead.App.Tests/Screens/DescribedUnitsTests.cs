using System.Globalization;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Components;
using Ohmstead.App.Screens.Findings;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Tests.Screens;

/// <summary>
/// Units that are described in words only, from an empty bench to a first finding, by the questions alone. What a unit shows is worked
/// out from its own type with one fault.
/// </summary>
public sealed class DescribedUnitsTests(ITestOutputHelper output) : IAsyncLifetime
{
    private static readonly Guid Id = new(5, 0, 0, new byte[8]);
    private OpenWorkshop workshop = null!;
    private string type = "";

    public async ValueTask InitializeAsync()
    {
        workshop = await OpenWorkshop.OpenAsync();
        workshop.Screens.Services.AddSingleton(new SiteOptions(0, IsOnLan: false, IsDemo: false));
        await workshop.Bench.EnterAsync(Id, 0, "bench", new TakenIn("7", "", "", ""));
        var first = await OwnTypes.BeginAsync(workshop.Bench, (await workshop.Bench.ReadAsync(Id))!);
        type = first.Split('/')[2];
        workshop.Screens.Services.GetRequiredService<Microsoft.AspNetCore.Components.NavigationManager>().NavigateTo(first);
    }

    public ValueTask DisposeAsync() => workshop.DisposeAsync();

    private AskedHand Hand()
    {
        var hand = new AskedHand(workshop, type);
        hand.See();
        return hand;
    }

    /// <summary>Two throttles on windings of their own, a whistle on each, and a third winding with a fixed post.</summary>
    [Fact]
    public async Task A_twin_with_separate_windings_and_whistles_and_a_third_winding()
    {
        var hand = Hand();
        hand.Type("watts", "200").Next("How many throttles?");
        hand.Choose("Two").Next("run on?");
        hand.Choose("A roller").Next("What comes out");
        hand.Choose("AC").Next("Which posts does throttle 1 feed?");
        hand.Type("post", "A").Type("return", "U").Type("low", "7").Type("full", "18").Next("Which posts does throttle 2 feed?");
        // The volts are those of the first until they are said to be others.
        hand.Type("post", "D").Type("return", "V").Next("Which other posts");
        hand.Type("post-1", "F").Type("volts-1", "12").Type("from-1", "G").Next("range lever?");
        hand.Choose("There is none").Next("whistle lever?");
        hand.Choose("One for each throttle").Next("get its volts?");
        hand.Choose("A small winding of its own").Next("direction?");
        hand.Choose("A button").Next("breaker?");
        hand.Choose("One in each throttle").Next("pilot lamp?");
        hand.Choose("There is none").Next("Look it over");
        hand.Make();
        var sheet = (await workshop.Bench.SheetAsync(type))!;
        Assert.Equal(
            ["boost-a", "boost-d", "first", "fixed", "primary", "second"],
            sheet.Windings.Select(w => w.Id).Order(StringComparer.Ordinal)
        );
        await FindsAsync(hand, sheet, "roller-d:open", taps: 60, characters: 70);
    }

    /// <summary>DC from a bridge behind a resistance wire, with a reversing switch.</summary>
    [Fact]
    public async Task A_direct_current_unit_with_a_resistance_wire_a_bridge_and_a_reversing_switch()
    {
        var (hand, sheet) = await DirectAsync();
        Assert.Equal(4, sheet.Elements.OfType<Rectifier>().Count());
        Assert.Equal(["ahead", "back"], sheet.Controls.Single(c => !c.IsThrottle).Positions);
        Assert.InRange(hand.Taps, 1, 34);
    }

    /// <summary>Readings behind a bridge take the search ten times as long.</summary>
    [Fact]
    [Trait("kind", "long")]
    public async Task A_direct_current_unit_has_its_first_finding_within_fifty_taps()
    {
        var (hand, sheet) = await DirectAsync();
        await FindsAsync(hand, sheet, "brush-track:open", taps: 50, characters: 45);
    }

    private async Task<(AskedHand Hand, TypeSheet Sheet)> DirectAsync()
    {
        var hand = Hand();
        hand.Type("watts", "40").Next("How many throttles?");
        hand.Choose("One").Next("run on?");
        hand.Choose("A resistance wire").Next("What comes out");
        hand.Choose("DC, from a bridge").Next("rectifier made of?");
        hand.Choose("Plates").Next("What does the throttle give?");
        hand.Type("full", "16").Type("ohms", "30").Next("Which other posts");
        hand.Type("post-1", "P").Type("volts-1", "16").Type("from-1", "Q").Next("range lever?");
        hand.Choose("There is none").Next("direction?");
        hand.Choose("A reversing switch").Next("breaker?");
        hand.Choose("On the mains side").Type("amps", "1").Next("pilot lamp?");
        hand.Choose("There is none").Next("Look it over");
        hand.Make();
        return (hand, (await workshop.Bench.SheetAsync(type))!);
    }

    /// <summary>One throttle gives AC from a roller and has a whistle; the other gives DC from steps and has a reversing switch.</summary>
    [Fact]
    public async Task A_twin_whose_throttles_have_nothing_in_common()
    {
        var hand = Hand();
        hand.Type("watts", "150").Next("How many throttles?");
        hand.Choose("Two").Next("What do the throttles run on?");
        hand.Choose("Not the same on each").Next("Throttle 1: what does it run on?");
        hand.Choose("A roller").Next("Throttle 2: what does it run on?");
        hand.Choose("Steps").Next("What comes out");
        hand.Choose("Not the same on each").Next("Throttle 1: what comes out");
        hand.Choose("AC").Next("Throttle 2: what comes out");
        hand.Choose("DC, from a bridge").Next("rectifier made of?");
        hand.Choose("Diodes").Next("Which posts does throttle 1 feed?");
        hand.Type("post", "A").Type("return", "U").Type("low", "6").Type("full", "18").Next("What does throttle 2 give?");
        hand.Type("steps", "6 9 12 15").Next("Which other posts");
        hand.Next("range lever?");
        hand.Choose("Not the same on each").Next("Throttle 1: is there a range lever?");
        hand.Choose("Yes").Next("Throttle 2: is there a range lever?");
        hand.Choose("There is none").Next("Is there a whistle lever?");
        hand.Choose("One for each throttle").Next("get its volts?");
        hand.Choose("A small winding of its own").Next("What changes the direction?");
        hand.Choose("Not the same on each").Next("Throttle 1: what changes the direction?");
        hand.Choose("A button").Next("Throttle 2: what changes the direction?");
        hand.Choose("A reversing switch").Next("breaker?");
        hand.Choose("One in each throttle").Next("pilot lamp?");
        hand.Choose("There is none").Next("Look it over");
        hand.Make();
        var sheet = (await workshop.Bench.SheetAsync(type))!;
        Assert.Equal(["boost-a", "extra-a", "first", "primary", "track"], sheet.Windings.Select(w => w.Id).Order(StringComparer.Ordinal));
        Assert.Equal(4, sheet.Elements.OfType<Switch>().Count(s => s.Id.StartsWith("step-second-", StringComparison.Ordinal)));
        Assert.InRange(hand.Taps, 1, 70);
    }

    /// <summary>Reads what needs no mains and no 500 V, and sees the fault among the findings.</summary>
    private async Task FindsAsync(AskedHand hand, TypeSheet sheet, string fault, int taps, int characters)
    {
        var model = new UnitModel(sheet);
        Assert.True(Fault.TryParse(fault, new FaultCatalogue(model), out var there, out _, out var why), why);
        var values = model.Nominal.Copy();
        there.ApplyTo(values);
        var minutes = 0.0;
        foreach (var spec in sheet.Readings.Where(r => IsCold(r, sheet.SupplyVolts)))
        {
            var value = new ReadingSolver().Solve(new FaultedCircuits(model, spec, spec.State).For([there]), values).Value!.Value;
            var isOver = value > Solution.OverRange(spec.Quantity);
            var shown = isOver ? "OL" : value.ToString(value < 20 ? "0.00" : "0.0", CultureInfo.InvariantCulture);
            var unit = (await workshop.Bench.ReadAsync(Id))!;
            await workshop.Bench.EnterAsync(
                Id,
                unit.LastNumber,
                "bench",
                new ReadingEntered(
                    spec.Id,
                    isOver ? Shown.OverRange : Shown.Number(double.Parse(shown, CultureInfo.InvariantCulture)),
                    BenchState.AsSheet
                )
            );
            hand.Read(shown);
            minutes += spec.Minutes;
        }
        var screen = workshop.Screens.Render<UnitFindings>(p => p.Add(s => s.Id, Id));
        screen.WaitForElement("article.finding", TimeSpan.FromSeconds(90));
        Assert.Contains("drafted from its plate and your answers. Bands are wide.", screen.Markup, StringComparison.Ordinal);
        output.WriteLine(FormattableString.Invariant($"{hand.Taps} taps, {hand.Characters} characters, {minutes} minutes of measuring"));
        Assert.Contains(PartNames.Fault(sheet, there.Mode), screen.Find("section.likely").TextContent, StringComparison.Ordinal);
        Assert.InRange(hand.Taps, 1, taps);
        Assert.InRange(hand.Characters, 1, characters);
        Assert.InRange(minutes, 1, 13);
    }

    private static bool IsCold(ReadingSpec r, double mains) =>
        !r.IsOpenCase && r.Quantity != Quantity.InsulationOhms && (r.State.Source is null || r.State.Source.Volts < mains / 2);
}
