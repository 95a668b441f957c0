using Ohmstead.App.Demo;
using Ohmstead.App.Tests.Screens;
using Ohmstead.Workshop.Journal;
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
        Assert.Equal(Enum.GetValues<NextAction>(), cards.Select(c => c.Next.Action).Distinct().Order());
        Assert.All(cards, c => Assert.Equal(64, c.Photo.Length));
        var now = workshop.Bench.Time.GetUtcNow();
        Assert.All(cards, c => Assert.InRange(c.LastAt, now.AddDays(-60), now));
        var dead = (await workshop.Bench.ReadAsync(cards.Single(c => c.Tag == "F-038").Id))!;
        Assert.Equal("blades", dead.CurrentReadings.Single().Fact.ReadingId);
        Assert.Single(dead.All<DamagePinned>());
    }

    [Fact]
    public void The_same_seed_gives_the_same_unit_and_the_same_picture()
    {
        Assert.Equal(Drawing.Jpeg(MouldedCase.Draw), Drawing.Jpeg(MouldedCase.Draw));
        Assert.NotEqual(Drawing.Jpeg(TinCase.Draw), Drawing.Jpeg(SteppedBox.Draw));
    }
}
