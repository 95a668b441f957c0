using Ohmstead.App.Web;

namespace Ohmstead.App.Tests.Web;

/// <summary>Two people on one unit know of each other, and nobody of himself.</summary>
public sealed class PresenceTests
{
    private static readonly Guid Unit = Guid.NewGuid();

    [Fact]
    public void Each_sees_the_others_on_the_same_unit_once_and_not_its_own_window()
    {
        var all = new Presence();
        using var laptop = all.Open(Unit, "the bench itself");
        using var tablet = all.Open(Unit, "Tablet");
        using var again = all.Open(Unit, "Tablet");
        using var elsewhere = all.Open(Guid.NewGuid(), "Phone");
        Assert.Equal(["Tablet"], all.Beside(Unit, laptop));
        Assert.Equal(["the bench itself", "Tablet"], all.Beside(Unit, tablet));
        Assert.Equal(["the bench itself", "Tablet"], all.Beside(Unit, null));
    }

    [Fact]
    public void Coming_and_leaving_are_told_once()
    {
        var all = new Presence();
        var told = new List<Guid>();
        all.Changed += told.Add;
        var tablet = all.Open(Unit, "Tablet");
        Assert.Equal([Unit], told);
        tablet.Dispose();
        tablet.Dispose();
        Assert.Equal([Unit, Unit], told);
        Assert.Empty(all.Beside(Unit, null));
    }
}
