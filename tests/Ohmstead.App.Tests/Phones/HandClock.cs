namespace Ohmstead.App.Tests.Phones;

/// <summary>A clock that is turned by hand.</summary>
internal sealed class HandClock : TimeProvider
{
    private TimeSpan turned = TimeSpan.Zero;

    public void Turn(TimeSpan by) => turned += by;

    public override DateTimeOffset GetUtcNow() => DateTimeOffset.UnixEpoch.AddYears(60) + turned;
}
