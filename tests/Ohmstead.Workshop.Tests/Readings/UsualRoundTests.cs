using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

public class UsualRoundTests
{
    [Fact]
    public void A_dozen_closed_readings_gates_first_each_after_its_needs() => Check("tests/Reference/sample/twin-160.sheet.json");

    [Theory]
    [Trait("kind", "long")]
    [InlineData("demo/twin-175.sheet.json")]
    [InlineData("demo/solo-110.sheet.json")]
    [InlineData("demo/step-230.sheet.json")]
    public void So_for_every_sheet_of_the_demo(string file) => Check(file);

    private static void Check(string file)
    {
        var sheet = OnTheBench.SheetOf(file);
        var round = UsualRound.Choose(new UnitModel(sheet), Meter.Usual);
        Assert.InRange(round.Length, UsualRound.Most, UsualRound.Most + 2);
        Assert.Equal(round.Length, round.Distinct().Count());
        Assert.All(round, r => Assert.False(r.IsOpenCase));
        Assert.All(sheet.Readings.Where(r => r.IsGate), g => Assert.Contains(g, round));
        for (var n = 0; n < round.Length; n++)
            Assert.All(round[n].Needs, need => Assert.Contains(round.Take(n), r => r.Id == need));
        // Faults of contacts show under load only: a round without a load would not find them.
        Assert.Contains(round, r => !r.State.Loads.IsEmpty);
    }

    [Fact]
    public void From_a_line_it_goes_to_the_next_that_can_be_taken_and_was_not_and_to_a_taken_one_only_where_none_is_left()
    {
        var bench = new OnTheBench().ColdGates();
        ReadingOffer[] lines = [bench.Offer("blades"), bench.Offer("ohms-left"), bench.Offer("left-full"), bench.Offer("insulation-core")];
        Assert.Equal([true, false, false, true], lines.Select(l => !l.IsToDo));
        Assert.False(lines[2].IsOpen);
        Assert.Equal((1, 3, -1), (UsualRound.Next(lines, -1), UsualRound.Next(lines, 1), UsualRound.Next(lines, 3)));
    }

    [Fact]
    public void Of_readings_on_one_pair_of_terminals_the_one_read_last_is_shown()
    {
        var bench = new OnTheBench().ColdGates().Read("lamp-60", 106).Read("left-load", 17).Read("left-full", 19);
        var offers = new[] { "left-full", "left-load", "left-low", "right-full" }.Select(bench.Offer);
        Assert.Equal(["left-full"], ReadingOffer.LastOfPairs(offers).Select(o => o.Spec.Id));
        Assert.Empty(ReadingOffer.LastOfPairs([bench.Read("right-full", Shown.NotTaken("no time")).Offer("right-full")]));
    }
}
