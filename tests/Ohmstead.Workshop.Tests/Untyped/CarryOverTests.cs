using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Untyped;

namespace Ohmstead.Workshop.Tests.Untyped;

/// <summary>A unit that was read, opened and recorded without a type turns out to be the demo's single-throttle one.</summary>
public class CarryOverTests
{
    private static readonly TypeSheet Solo = OnTheBench.SheetOf("demo/solo-110.sheet.json");

    private static readonly Fact[] Before =
    [
        new TakenIn("1", "", "", ""),
        new PlateRead(117, 110),
        .. NamedPosts.Read("A B C T D"),
        new TerminalNamed("untyped-lug-1", "middle lug", false),
        new ReadingEntered("untyped-blades", Shown.Number(6.2), BenchState.AsSheet) { Title = "Between the plug blades" },
        new ReadingEntered("untyped-insulation-case", Shown.Number(300e6), BenchState.AsSheet) { Title = "Both blades to the case, 500 V" },
        new ReadingEntered("untyped-insulation-posts", Shown.Number(400e6), BenchState.AsSheet)
        {
            Title = "Both blades to all posts, 500 V",
        },
        new ReadingEntered("untyped-blades-untyped-post-1", Shown.OverRange, BenchState.AsSheet) { Title = "Plug blade to post A" },
        new TakenOff("untyped-off-1", 2, 1, "") { Title = "throttle knob" },
        new JointSeen(WiringState.Found, "untyped-post-2", [new WireEnd("untyped-wire-1.from", "yellow")], "", 0, 0),
        new JointSeen(WiringState.Found, "untyped-lug-1", [new WireEnd("untyped-wire-1.to", "yellow")], "", 0, 0),
        new FindingJudged("untyped-primary", "open", Judgement.Dismissed, ""),
    ];

    private static Dictionary<string, string> Proposed(BenchUnit unit) =>
        CarryOver.Choices(unit, Solo).ToDictionary(c => c.From, c => c.Proposed);

    private static BenchUnit Carried(Action<Dictionary<string, string>>? choose = null)
    {
        var unit = OneUnit.Of(Before);
        var chosen = Proposed(unit);
        choose?.Invoke(chosen);
        return OneUnit.Of([.. Before, unit.Card with { SheetId = "solo-110" }, CarryOver.Make(unit, Solo, chosen)]);
    }

    [Fact]
    public void Blades_core_and_posts_are_proposed_by_their_marks_and_a_lug_is_asked_for()
    {
        var chosen = Proposed(OneUnit.Of(Before));
        Assert.Equal(("blade-1", "blade-2", "iron"), (chosen["blade-1"], chosen["blade-2"], chosen["case"]));
        Assert.Equal(("post-a", "post-d"), (chosen["untyped-post-1"], chosen["untyped-post-5"]));
        Assert.Equal("", chosen["untyped-lug-1"]);
    }

    [Fact]
    public void Readings_become_the_types_readings_of_the_same_points_and_the_rest_stays()
    {
        var unit = Carried();
        Assert.Equal(
            ["blades", "insulation-core", "insulation-posts", "untyped-blades-untyped-post-1"],
            unit.CurrentReadings.Select(r => r.Fact.ReadingId)
        );
        Assert.Equal(6.2, unit.CurrentReadings.First().Fact.Shown.Value);
        // What no type sheet has keeps the words it was entered with.
        Assert.Equal("Plug blade to post A: OL", FactWords.Of(unit.CurrentReadings.Last().Fact, Solo));
        Assert.Equal("Between the plug blades: 6.2 Ω", FactWords.Of(unit.CurrentReadings.First().Fact, Solo));
    }

    [Fact]
    public void A_post_that_is_another_one_takes_its_reading_from_the_points_that_are_no_longer_the_same()
    {
        var unit = Carried(chosen => chosen["untyped-post-5"] = "");
        Assert.DoesNotContain("insulation-posts", unit.CurrentReadings.Select(r => r.Fact.ReadingId));
        Assert.Contains("untyped-insulation-posts", unit.CurrentReadings.Select(r => r.Fact.ReadingId));
    }

    [Fact]
    public void Wires_are_joined_to_the_types_wires_the_right_way_round()
    {
        // The yellow wire of post B runs from the 6 V lug (from) to post B (to) in demo/solo-110.sheet.json; here post B was seen first.
        var element = Solo.Elements.Single(e => e.Id == "w-6");
        Assert.Equal("post-b", element.To);
        var unit = Carried(chosen => (chosen["untyped-lug-1"], chosen["untyped-wire-1"]) = (element.From, "w-6"));
        var record = Ohmstead.Workshop.Wiring.WiringRecord.Of(unit, Solo, WiringState.Found);
        Assert.Equal("post-b", record.TerminalOf("w-6.to"));
        Assert.Equal(element.From, record.TerminalOf("w-6.from"));
        Assert.Equal("yellow", record.ColourOf("w-6.to"));
        Assert.DoesNotContain(record.Against(Solo), d => d.End.StartsWith("w-6.", StringComparison.Ordinal));
    }

    [Fact]
    public void Steps_and_findings_come_along_and_another_type_leaves_all_as_it_was()
    {
        var unit = Carried(chosen => chosen["untyped-off-1"] = "knob");
        Assert.Equal("knob", unit.All<TakenOff>().Single().Fact.Step);
        // What the type has no step for keeps its own words.
        Assert.Equal(
            "throttle knob",
            Ohmstead.Workshop.TakeApart.ApartState.Of(Carried(c => c["untyped-off-1"] = ""), Solo).Off[0].Step.Title
        );
        Assert.Equal("primary", unit.All<FindingJudged>().Single().Fact.Element);
        Assert.False(CarryOver.IsOpen(unit));
        var other = OneUnit.Of([.. unit.Journal.Select(e => e.Fact), unit.Card with { SheetId = "twin-175" }]);
        Assert.Equal("untyped-blades", other.CurrentReadings.First().Fact.ReadingId);
        Assert.True(CarryOver.IsOpen(other));
        var plain = CarryOver.Plain(unit);
        Assert.Equal(("", "untyped-blades"), (plain.Card.SheetId, plain.CurrentReadings.First().Fact.ReadingId));
    }
}
