using System.Collections.Immutable;

namespace Ohmstead.Workshop.Listening;

/// <summary>Recordings of one unit against one another: only against the same room's noise do they mean anything.</summary>
/// <param name="Changes">Of each against the first.</param>
/// <param name="GainMoved">The noise differs so much that the phone, or the room, was not the same.</param>
public sealed record HumComparison(ImmutableArray<HumChange> Changes, bool GainMoved)
{
    private const double MostFloorDb = 6;

    /// <summary>Said where the recordings cannot be compared; empty where they can.</summary>
    public string Doubt =>
        GainMoved ? "The noise differs by more than 6 dB: the phone turned itself up or down, or the room changed. Record again." : "";

    /// <summary>Compares line 2 of each with that of the first.</summary>
    public static HumComparison Of(ImmutableArray<(string Label, HumRecording Recording)> recordings)
    {
        if (recordings.Select(r => r.Recording.FoundHertz).FirstOrDefault(f => f is not null) is not { } supply)
            return new(
                [.. recordings.Skip(1).Select(r => new HumChange(recordings[0].Label, r.Label, null, HumWords.OfChange(null, r.Label)))],
                false
            );
        var lines = recordings.Select(r => r.Recording.LineTwo(r.Recording.FoundHertz ?? supply)).ToImmutableArray();
        return new(
            [
                .. Enumerable
                    .Range(1, recordings.Length - 1)
                    .Select(n => (n, Change: lines[n].AboveFloorDb - lines[0].AboveFloorDb))
                    .Select(c => new HumChange(
                        recordings[0].Label,
                        recordings[c.n].Label,
                        c.Change,
                        HumWords.OfChange(c.Change, recordings[c.n].Label)
                    )
                    {
                        // Each against the noise of its own recording, as line 2 is.
                        HeardChangeDb =
                            recordings[c.n].Recording.HeardDb - lines[c.n].FloorDb - (recordings[0].Recording.HeardDb - lines[0].FloorDb),
                    }),
            ],
            lines.Max(l => l.FloorDb) - lines.Min(l => l.FloorDb) > MostFloorDb
        );
    }
}

/// <summary>One recording against another.</summary>
/// <param name="From">Label of the first.</param>
/// <param name="To">Label of this one.</param>
/// <param name="ChangeDb">Of line 2 above the noise; null where neither has hum.</param>
/// <param name="Words">The same for a person.</param>
public sealed record HumChange(string From, string To, double? ChangeDb, string Words)
{
    /// <summary>Of all lines as an ear hears them, each against the noise of its own recording [dB(A)]; null where one has no hum.</summary>
    public double? HeardChangeDb { get; init; }
}
