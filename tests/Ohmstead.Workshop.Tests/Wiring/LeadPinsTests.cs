using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Tests.Wiring;

public sealed class LeadPinsTests
{
    private static readonly ReadingSpec Reading = OnTheBench.Sheet.Readings.First(r => r.From.Length > 0);

    private static readonly (string Front, string Back) Photos = (new('a', 64), new('b', 64));

    private static JointSeen Pinned(string terminal, string photo, double x, double y) => new(WiringState.Found, terminal, [], photo, x, y);

    private static LeadPins Of(params JointSeen[] joints)
    {
        var bench = new OnTheBench();
        foreach (var joint in joints)
            bench.Add(joint);
        return LeadPins.Of(bench.Unit, Reading);
    }

    [Fact]
    public void Both_leads_stand_on_one_photo_where_their_terminals_were_pinned()
    {
        var photo = Assert.Single(Of(Pinned(Reading.From, Photos.Front, 0.2, 0.3), Pinned(Reading.To, Photos.Front, 0.7, 0.8)).Photos);
        Assert.Equal(Photos.Front, photo.Photo);
        Assert.Equal([new(true, 0.2, 0.3), new(false, 0.7, 0.8)], photo.Pins);
    }

    [Fact]
    public void Of_a_terminal_pinned_twice_the_last_place_counts_and_one_on_no_photo_has_none()
    {
        var pins = Of(
            Pinned(Reading.From, Photos.Front, 0.2, 0.3),
            Pinned(Reading.From, Photos.Back, 0.4, 0.5),
            Pinned(Reading.To, "", 0, 0)
        );
        var photo = Assert.Single(pins.Photos);
        Assert.Equal((Photos.Back, new LeadPin(true, 0.4, 0.5)), (photo.Photo, Assert.Single(photo.Pins)));
        Assert.Empty(Of().Photos);
    }
}
