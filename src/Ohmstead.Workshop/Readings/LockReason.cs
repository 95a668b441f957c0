using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>One thing that keeps a reading locked.</summary>
/// <param name="About">The part of the look-over or the reading; empty for the wiring check.</param>
/// <param name="What">"Plug: not looked at", "Between the plug blades: not taken yet".</param>
/// <param name="Act">What follows, as a sentence: "Look at it, or sign for it."</param>
/// <param name="Button">What leads there: "Look-over: plug".</param>
public sealed record LockReason(LockPlace Place, string About, string What, string Act, string Button)
{
    /// <summary>Why a reading is locked, what to do first first; empty when it may be taken.</summary>
    public static ImmutableArray<LockReason> Of(ReadingOffer offer) =>
        [
            .. offer.Endangering.Select(d => new LockReason(
                LockPlace.LookOver,
                d.Item.Id,
                EndangeringWords.What(d),
                EndangeringWords.Act(d),
                $"Look-over: {Sentences.Small(d.Item.Title)}"
            )),
            .. offer.WaitsForCheck
                ? [new LockReason(LockPlace.WiringCheck, "", "A wire was moved", "The wiring check has to pass first.", "Wiring check")]
                : Array.Empty<LockReason>(),
            .. offer.Shut.Select(Of),
        ];

    private static LockReason Of(ShutGate gate)
    {
        var said = gate.Why.Split(". ", 2);
        return new(
            LockPlace.Reading,
            gate.Gate.Id,
            $"{gate.Gate.Title}{(gate.End == CheckEnd.NotTaken ? ":" : ".")} {said[0]}",
            said.Length > 1 ? $"{said[1]}." : "Take it first.",
            $"{(gate.End == CheckEnd.NotTaken ? "Take" : "Read again")}: {Sentences.Small(gate.Gate.Title)}"
        );
    }

    /// <summary>The first, and how many more, for where one line has to do.</summary>
    public static string Briefly(ImmutableArray<LockReason> all) =>
        $"{all[0].What}. {all[0].Act}{(all.Length > 1 ? $" And {ValueText.Plain(all.Length - 1)} more." : "")}";
}

/// <summary>Where what keeps a reading locked is put right.</summary>
public enum LockPlace
{
    /// <summary>In the look-over.</summary>
    LookOver,

    /// <summary>In the wiring check.</summary>
    WiringCheck,

    /// <summary>By another reading.</summary>
    Reading,
}
