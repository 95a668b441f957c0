using Ohmstead.App.Demo;
using Ohmstead.App.Tests.Screens;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests.Web;

/// <summary>The invented workshop.</summary>
public class DemoTests
{
    [Fact]
    public async Task A_dozen_units_of_three_kinds_stand_at_different_points_of_the_job()
    {
        await using var workshop = await OpenWorkshop.OpenAsync();
        await DemoWorkshop.FillAsync(workshop.Bench, CancellationToken.None);
        var cards = await workshop.Bench.Store.CardsAsync(withHandedBack: true, CancellationToken.None);
        Assert.Equal(12, cards.Count);
        Assert.Equal(["", "solo-110", "step-230", "twin-175"], cards.Select(c => c.SheetId).Distinct().Order());
        // Every unit has a type sheet, or one that stands in for it: none waits for its type. To be returned is what the one without its
        // record becomes when that is made.
        Assert.Equal(Enum.GetValues<NextAction>().Except([NextAction.NameKind, NextAction.Return]), cards.Select(c => c.Next.Action).Distinct().Order());
        Assert.All(cards, c => Assert.Equal(64, c.Photo.Length));
        var now = workshop.Bench.Time.GetUtcNow();
        Assert.All(cards, c => Assert.InRange(c.LastAt, now.AddDays(-60), now));
        var dead = (await workshop.Bench.ReadAsync(cards.Single(c => c.Tag == "F-038").Id))!;
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
        await using var workshop = await OpenWorkshop.OpenAsync();
        await DemoWorkshop.FillAsync(workshop.Bench, CancellationToken.None);
        var card = (await workshop.Bench.Store.CardsAsync(withHandedBack: true, CancellationToken.None)).Single(c => c.Tag == tag);
        var unit = (await workshop.Bench.ReadAsync(card.Id))!;
        var model = new UnitModel((await workshop.Bench.SheetAsync(card.SheetId))!);
        var readings = ReadingsText.Of(unit, model, await workshop.Bench.ShopAsync()).Required;
        var result = Diagnoser.Run(new ReadingLibrary(model), readings, new DiagnosisOptions { RankNext = false });
        var first = result.Faults[0].Mode;
        var alike = result.Alike.FirstOrDefault(g => g.Any(m => m.Name == first.Name));
        Assert.True(
            first.Name == planted || (!alike.IsDefault && alike.Any(m => m.Name == planted)) || result.Faults.Take(3).Any(f => f.Mode.Name == planted),
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
