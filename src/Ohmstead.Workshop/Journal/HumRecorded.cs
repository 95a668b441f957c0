using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>The hum of the unit was recorded; of one label the last recording counts.</summary>
/// <param name="As">How the unit stood meanwhile.</param>
/// <param name="Recording">SHA-256 of the file as the phone made it.</param>
/// <param name="Wav">SHA-256 of the same as WAV, which is what was listened to; the same where the phone made a WAV.</param>
/// <param name="Heard">What was heard then: "nothing above the noise", or "hum" with "odd lines" and "buzz".</param>
public sealed record HumRecorded(HumState As, string Recording, string Wav, ImmutableArray<string> Heard) : Fact
{
    /// <summary>A state in words, as the screen and the log say it.</summary>
    public static string Said(HumState state) =>
        state switch
        {
            HumState.Loaded => "with a load",
            HumState.Lifted => "rollers lifted",
            _ => "no load",
        };
}

/// <summary>How the unit stood while it was recorded.</summary>
public enum HumState
{
    /// <summary>On the mains, nothing connected.</summary>
    Idle,

    /// <summary>With a load.</summary>
    Loaded,

    /// <summary>On the mains, nothing connected, the rollers off the bare turns.</summary>
    Lifted,
}
