using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Reckoning.Deciding;

namespace Ohmstead.Workshop.Job;

/// <summary>A dead short at the far end of the owner's wire: does the fuse open before the wire is too hot? The question <c>fuse</c>.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Answer">What it comes to.</param>
public sealed record LayoutShort(FuseChoice Question, FuseAnswer Answer)
{
    /// <summary>Fuses of the shops: quick and slow ones by the gates of IEC 60127-2, American ones by those of UL 248-14.</summary>
    private static readonly ImmutableArray<string> Families = ["iec-quick", "iec-time-lag", "us-fast"];

    /// <summary>Of a pair of posts with a fuse and a wire; null where one of them is not known, and where a short drives no more than the load.</summary>
    public static LayoutShort? Of(PostBudget post)
    {
        if (post is not { Wire: { } wire, Load: { FuseAmps: { } fuse, Amps: > 0 and var load, WireDropVolts: { } drop } })
            return null;
        var path = post.Supply.SourceOhms + (drop / load);
        if (path <= 0 || post.Supply.Volts / path <= load)
            return null;
        var question = new FuseChoice(
            load,
            post.Supply.Volts / path,
            null,
            new(Cord.AreaOf(wire.GaugeAwg), true, FuseWire.UsualStart, FuseWire.UsualEnd),
            1,
            Families,
            [fuse]
        );
        return new(question, question.Answer());
    }

    /// <summary>In a sentence or two: which fuse, how soon it opens, how long the wire bears it; or why there is none.</summary>
    public string Words
    {
        get
        {
            var amps = Math.Round(Question.ShortAmps).ToString(CultureInfo.InvariantCulture);
            return Picked is { } fuse
                ? $"On a dead short, about {amps} A, a {Title(fuse)} opens within {Seconds(fuse.OpensWithinSeconds)}. The wire takes that for {Seconds(Answer.WireSeconds)}."
                : Answer.Words[0];
        }
    }

    /// <summary>What a breaker in place of the fuse must be; empty where no fuse was found.</summary>
    public string Breaker => Picked is null ? "" : Answer.Words[1];

    private FuseOption? Picked => Answer.Fuses.FirstOrDefault(f => f.Family == Answer.Family);

    private static string Title(FuseOption fuse) => string.Create(CultureInfo.InvariantCulture, $"{fuse.RatedAmps:0.###} A {fuse.Title}");

    private static string Seconds(double seconds) => string.Create(CultureInfo.InvariantCulture, $"{seconds:0.##} s");
}
