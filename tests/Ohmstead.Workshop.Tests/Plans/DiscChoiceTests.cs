using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Plans;

/// <summary>Disc and diode side by side. Volts are those of the example of docs/methods/deciding.md, one digit more than there.</summary>
public class DiscChoiceTests
{
    private static FaultProbability Aged(OnTheBench bench) =>
        new(new FaultCatalogue(bench.Model).Find("disc-left:high-drop")!, 0.9, 1.4, 1, 2);

    private static DiscChoice Choice(DiscPlace place) =>
        DiscChoice.Of(OnTheBench.Sheet, new OnTheBench().Model, "disc-left", Aged(new OnTheBench()), place)!;

    /// <summary>Aged, new, silicon at 24, 9 and 4.8 Ω, fully pressed: only 4.8 Ω holds, with a new disc or silicon.</summary>
    [Fact]
    public void Only_the_long_train_holds_the_whistle_and_only_with_a_new_part()
    {
        var parts = Choice(new(null, "either")).Parts;
        Assert.Equal(["as it is", "new disc", "diode"], parts.Select(p => p.Name));
        Assert.All(parts.SelectMany(p => p.Calls.Take(2)), c => Assert.NotEqual("whistle holds", c.Whistle));
        Assert.NotEqual("whistle holds", parts[0].Calls[2].Whistle);
        Assert.Equal("whistle holds", parts[1].Calls[2].Whistle);
        Assert.Equal("whistle holds", parts[2].Calls[2].Whistle);
        Assert.StartsWith("0.968 V DC", parts[2].Calls[2].Volts, StringComparison.Ordinal);
        Assert.Equal(["3.60 V", "1.02 V", "1.00 V"], parts.Select(p => p.Drop));
    }

    /// <summary>38 by 18 mm of room: 38 − (9.5 + 2·12) = 4.5 and 18 − (5.3 + 2·3) = 6.7 for the diode, 18 − (12 + 6) = 0 for a disc.</summary>
    [Fact]
    public void What_fits_is_what_the_room_leaves()
    {
        var parts = Choice(new((38, 18), "positive")).Parts;
        Assert.Equal("fits, 4.5 mm to spare", parts[2].Room);
        Assert.Equal("fits, 0 mm to spare", parts[1].Room);
        Assert.Equal("no room, 3.5 mm short", Choice(new((30, 18), "positive")).Parts[2].Room);
        Assert.Equal("measure the room", Choice(new(null, "positive")).Parts[2].Room);
    }

    [Fact]
    public void The_owners_trains_say_which_way_round()
    {
        var (plus, minus) = (Choice(new(null, "positive")).Parts[2].Way, Choice(new(null, "negative")).Parts[2].Way);
        Assert.Equal(["same way as the old one", "the other way round"], new[] { plus, minus }.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_part_that_is_no_disc_has_no_such_choice()
    {
        Assert.Null(DiscChoice.Steps(new OnTheBench().Model, "roller-left"));
        Assert.Null(DiscChoice.Of(OnTheBench.Sheet, new OnTheBench().Model, "roller-left", null, new(null, "either")));
    }

    [Theory]
    [InlineData("38", "", true)]
    [InlineData("38", "18", true)]
    [InlineData("38", "x", false)]
    [InlineData("-1", "18", false)]
    public void A_room_is_read_as_typed(string length, string height, bool isRead) =>
        Assert.Equal(isRead, DiscPlace.Read(length, height, "either").Place is not null);

    /// <summary>What was decided is offered to the repair, and the repair changes what every reading is expected to show.</summary>
    [Fact]
    public void A_diode_that_is_fitted_changes_the_circuit_of_the_unit()
    {
        var bench = new OnTheBench();
        var options = PartOptions.Of(bench.Unit, bench.Own, null, OnTheBench.Shop, "disc-left", "high-drop")!;
        var diode = options.Fits.Single(f => f.Figures.Length > 0);
        var fact = Assert.IsType<PartDecided>(options.Choose(DecidedAct.Replace, diode, "1,40", "", "weak").Fact);
        Assert.Equal((1.40m, "silicon diode", null), (fact.Price, fact.Part, fact.Minutes));
        bench.Add(fact);
        var draft = fact.Figures.Aggregate(
            Ohmstead.Workshop.Findings.PartDraft.Of(bench.Unit, OnTheBench.Sheet, "disc-left")!,
            (d, f) => d.With(f.Name, f.Value.ToString("G6", System.Globalization.CultureInfo.InvariantCulture))
        );
        bench.Add(draft.Finish(bench.Unit, OnTheBench.Sheet, "").Fact!);
        Assert.Equal(
            1e-9,
            bench.Own.Elements.OfType<Ohmstead.Electrical.TypeSheets.Rectifier>().Single(e => e.Id == "disc-left").SaturationAmps
        );
        Assert.Empty(WorkToDo.Decisions(bench.Unit));
    }

    [Fact]
    public void What_cannot_be_is_refused_in_words()
    {
        var bench = new OnTheBench();
        var options = PartOptions.Of(bench.Unit, bench.Own, null, OnTheBench.Shop, "disc-left", "")!;
        Assert.StartsWith("Price:", options.Choose(DecidedAct.Replace, null, "x", "", "").Refused, StringComparison.Ordinal);
        Assert.StartsWith("Minutes:", options.Choose(DecidedAct.Clean, null, "", "0", "").Refused, StringComparison.Ordinal);
        // What is not fitted has no price, and what is not done no minutes.
        var leave = (PartDecided)options.Choose(DecidedAct.Leave, options.Fits[1], "1.40", "20", "").Fact!;
        Assert.Equal((0m, "", null), (leave.Price, leave.Part, leave.Minutes));
        Assert.Null(PartOptions.Of(bench.Unit, bench.Own, null, OnTheBench.Shop, "no-such-part", ""));
    }
}
