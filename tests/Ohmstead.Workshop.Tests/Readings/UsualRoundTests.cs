using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
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
}
