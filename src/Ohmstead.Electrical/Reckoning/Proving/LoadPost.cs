namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>A post that loads hang on.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Volts">At no load, where the throttle is.</param>
/// <param name="SourceOhms">Behind it.</param>
/// <param name="MostAmps">That it may give.</param>
/// <param name="Wire">To the track; null for none.</param>
/// <param name="Track">Null for none.</param>
/// <param name="MostDropPercent">Of its volts, in the wire.</param>
public sealed record LoadPost(
    string Id,
    double Volts,
    double SourceOhms,
    double MostAmps,
    LoadWire? Wire,
    LoadTrack? Track,
    double MostDropPercent
)
{
    /// <summary>Reads one.</summary>
    internal static LoadPost Read(QuestionFields post, ISet<string> taken, double usableAmps) =>
        new(
            post.NewId("id", taken),
            post.Number("volts", NumberRange.Positive),
            post.Number("sourceOhms", NumberRange.NotNegative, 0),
            post.Number("mostAmps", NumberRange.NotNegative, usableAmps),
            LoadWire.Read(post),
            LoadTrack.Read(post),
            post.Number("mostDropPercent", NumberRange.Percent, 5)
        );
}

/// <summary>A loop of track.</summary>
/// <param name="LoopFeet">Once round.</param>
/// <param name="OhmsPerFoot">Both rails.</param>
/// <param name="Feeders">Places at which it is fed.</param>
public sealed record LoadTrack(double LoopFeet, double OhmsPerFoot, double Feeders)
{
    /// <summary>Reads a post's track.</summary>
    internal static LoadTrack? Read(QuestionFields post) =>
        post.Part("track") is { } track
            ? new(
                track.Number("loopFeet", NumberRange.NotNegative),
                track.Number("ohmsPerFoot", NumberRange.NotNegative),
                track.Number("feeders", NumberRange.AtLeast(1), 1)
            )
            : null;

    /// <summary>Volts lost half-way between two feeders, the load there, fed from both sides: half the distance on each, in parallel.</summary>
    public double DropVolts(double amps) => amps * OhmsPerFoot * LoopFeet / Feeders / 4;
}

/// <summary>Something that draws current, so many of it.</summary>
/// <param name="What">Its word.</param>
/// <param name="Count">How many.</param>
/// <param name="Post">Where it hangs.</param>
/// <param name="Amps">Of one.</param>
/// <param name="OnPercent">Of the time.</param>
public sealed record Consumer(string What, double Count, string Post, double Amps, double OnPercent)
{
    /// <summary>Of all of it, on average.</summary>
    public double AllAmps => Count * Amps * OnPercent / 100;
}
