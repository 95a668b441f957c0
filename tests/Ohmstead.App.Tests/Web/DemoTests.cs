using Ohmstead.App.Demo;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Web;

/// <summary>The invented workshop.</summary>
public class DemoTests(DemoSite site)
{
    [Fact]
    public async Task A_dozen_units_of_three_kinds_stand_at_different_points_of_the_job()
    {
        var demo = await FilledDemo.ReadAsync();
        var cards = demo.Cards;
        Assert.Equal(12, cards.Count);
        Assert.Equal(["", "solo-110", "step-230", "twin-175"], cards.Select(c => c.SheetId).Distinct().Order());
        // Every unit has a type sheet, or one that stands in for it: none waits for its type. To be returned is what the one without its
        // record becomes when that is made. No clock of a test runs in a workshop of days ago.
        Assert.Equal(
            Enum.GetValues<NextAction>().Except([NextAction.NameKind, NextAction.Return, NextAction.HeatRun, NextAction.TimeBreaker]),
            cards.Select(c => c.Next.Action).Distinct().Order()
        );
        Assert.All(cards, c => Assert.Equal(64, c.Photo.Length));
        Assert.All(cards, c => Assert.InRange(c.LastAt, demo.At.AddDays(-60), demo.At));
        var dead = demo.Units[cards.Single(c => c.Tag == "F-038").Id];
        Assert.Equal("blades", dead.CurrentReadings.Single().Fact.ReadingId);
        Assert.Single(dead.All<DamagePinned>());
    }

    /// <summary>What was planted in a unit of the demo is what its readings say, or is among what they cannot tell from it.</summary>
    [Theory]
    [InlineData("F-036", "disc:leaky")]
    [InlineData("F-039", "plate-2:open")]
    [InlineData("F-038", "cord-1:open")]
    public async Task What_was_planted_is_found(string tag, string planted)
    {
        var result = (await site.AnswerAsync(site.Card(tag)))!.Result;
        var first = result.Faults[0].Mode;
        var alike = result.Alike.FirstOrDefault(g => g.Any(m => m.Name == first.Name));
        Assert.True(
            first.Name == planted
                || (!alike.IsDefault && alike.Any(m => m.Name == planted))
                || result.Faults.Take(3).Any(f => f.Mode.Name == planted),
            string.Join(", ", result.Faults.Take(5).Select(f => FormattableString.Invariant($"{f.Mode.Name} {f.Probability:F2}")))
        );
    }

    [Fact]
    public void The_same_seed_gives_the_same_unit_and_the_same_picture()
    {
        Assert.Equal(Drawing.Jpeg(HexagonBox.Draw), Drawing.Jpeg(HexagonBox.Draw));
        Assert.NotEqual(Drawing.Jpeg(RoundCan.Draw), Drawing.Jpeg(LadderFront.Draw));
    }
}
