using System.Collections.Immutable;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Job;

/// <summary>Something that is not done, did not pass, or was waived, when a unit is to go back.</summary>
/// <param name="Title">What: "Cord", the title of a reading, "2 pieces left over".</param>
/// <param name="Words">How it stands.</param>
/// <param name="Place">Where it is put right.</param>
/// <param name="About">Reading, part or step it is about.</param>
public sealed record OpenThing(OpenWeight Weight, string Title, string Words, OpenPlace Place, string About)
{
    /// <summary>True while the unit cannot go back as working: what somebody signed for, and what is only to be known, is no bar.</summary>
    public bool IsOpen => Weight is OpenWeight.Failed or OpenWeight.ToDo;

    /// <summary>Everything, in the order in which it is put right.</summary>
    public static ImmutableArray<OpenThing> All(JudgedUnit judged) =>
        [
            .. Known(judged),
            .. Dangers(judged),
            .. Checks(judged),
            .. Tests(judged),
            .. Wires(judged),
            .. Pieces(judged),
            .. Repairs(judged),
        ];

    private static IEnumerable<OpenThing> Known(JudgedUnit judged)
    {
        if (judged.Sheet is null || UntypedIds.IsOne(judged.Sheet))
            yield return new(
                OpenWeight.ToDo,
                "Type not known",
                "Nothing was tested on mains: that takes a type sheet.",
                OpenPlace.LookOver,
                ""
            );
    }

    private static IEnumerable<OpenThing> Dangers(JudgedUnit judged) =>
        Endangering
            .All(judged.Unit, judged.Sheet, judged.Shop)
            .Select(d => new OpenThing(
                d.State switch
                {
                    Danger.SignedFor => OpenWeight.Waived,
                    Danger.Found => OpenWeight.Failed,
                    _ => OpenWeight.ToDo,
                },
                d.Item.Title,
                d.State switch
                {
                    Danger.SignedFor => $"not looked at, signed by {d.SignedBy}: {d.Why}",
                    Danger.NotLookedAt => "not looked at",
                    _ => $"{d.Seen}. {EndangeringWords.Act(d)}",
                },
                OpenPlace.LookOver,
                d.Item.Id
            ));

    private static IEnumerable<OpenThing> Checks(JudgedUnit judged)
    {
        foreach (var line in judged.Failed)
            yield return new(
                OpenWeight.Failed,
                line.Title,
                $"failed: it read {line.Measured}. {Sentences.Large(line.Limits)}",
                OpenPlace.Reading,
                line.Id
            );
        foreach (var line in judged.TooClose)
            yield return new(
                OpenWeight.ToDo,
                line.Title,
                $"too close for the meter: it read {line.Measured}. {Sentences.Large(line.Limits)}",
                OpenPlace.Reading,
                line.Id
            );
        foreach (var line in judged.Doubted)
            yield return new(
                OpenWeight.ToDo,
                line.Title,
                $"To be read again. It read {line.Measured}: {line.Verdict}.",
                OpenPlace.Reading,
                line.Id
            );
        foreach (var hot in judged.Heat)
            yield return new(OpenWeight.ToDo, "Find what makes the extra heat", $"{hot}. {BenchDoubt.NotReturned}", OpenPlace.Findings, "");
        foreach (var doubt in judged.Doubts.Where(d => d.Weakens))
            yield return new(OpenWeight.ToKnow, doubt.Headline, $"{doubt.Do} {BenchDoubt.CountLess}", OpenPlace.Findings, "");
        foreach (var line in judged.Slipped)
            yield return new(
                OpenWeight.ToKnow,
                line.Title,
                $"To be read again. It read {line.Measured}: {line.Verdict}.",
                OpenPlace.Reading,
                line.Id
            );
        foreach (var line in judged.Skipped)
            yield return new(OpenWeight.ToDo, line.Title, "to do", OpenPlace.Reading, line.Id);
        foreach (var line in judged.Waived)
            yield return new(
                OpenWeight.Waived,
                line.Title,
                $"waived by {line.Waiver!.WaivedBy}: {line.Waiver.Why}",
                OpenPlace.Reading,
                line.Id
            );
    }

    private static IEnumerable<OpenThing> Tests(JudgedUnit judged) =>
        [
            .. judged.Dangerous.Select(t => new OpenThing(
                OpenWeight.Failed,
                t.Test.Title,
                $"{TestEndWords.Of(t.End)}: it read {t.Read}. Limit: {t.LimitWords}",
                OpenPlace.Tests,
                t.Test.Id
            )),
            // A check that is a reading stands among the checks already.
            .. judged
                .Tests.Where(t => t.Test is { IsLeftOut: true, Offer: null or { Spec.IsGate: false } })
                .Select(t => new OpenThing(
                    OpenWeight.ToKnow,
                    t.Test.Title,
                    $"not taken: {t.Test.Taken!.NotTaken}",
                    OpenPlace.Tests,
                    t.Test.Id
                )),
        ];

    private static IEnumerable<OpenThing> Wires(JudgedUnit judged)
    {
        foreach (var wrong in judged.WrongEnds)
            yield return new(
                OpenWeight.Failed,
                Sentences.Large(WireEnds.Said(wrong.End, judged.Sheet!)),
                $"on {PartNames.Terminal(judged.Sheet!, wrong.Seen)}, should be on {PartNames.Terminal(judged.Sheet!, wrong.Planned)}",
                OpenPlace.Wiring,
                wrong.End
            );
        if (judged.Apart is { LooseWires.IsEmpty: false } apart)
            yield return new(
                OpenWeight.ToDo,
                "Loose wires",
                string.Join(", ", apart.LooseWires.Select(w => PartNames.Of(judged.Sheet!, w))),
                OpenPlace.Back,
                ""
            );
        if (judged.WaitsForCheck)
            yield return new(OpenWeight.ToDo, "Wiring check", "A wire was moved. The check has not passed.", OpenPlace.Check, "");
    }

    private static IEnumerable<OpenThing> Pieces(JudgedUnit judged)
    {
        if (judged.Apart is not { } apart)
            yield break;
        foreach (var off in apart.Off)
            yield return new(
                OpenWeight.ToDo,
                Sentences.Large(PartNames.Step(judged.Sheet, off.Step.Id)),
                "still off",
                OpenPlace.Back,
                off.Step.Id
            );
        foreach (var back in apart.Back.Where(b => b.Remainder != 0))
        {
            var many = Counted.Of(Math.Abs(back.Remainder), "piece");
            yield return new(
                back.Fact.By.Length > 0 ? OpenWeight.Waived : OpenWeight.ToDo,
                back.Remainder > 0 ? $"{many} left over" : $"{many} more than came off",
                $"{PartNames.Step(judged.Sheet, back.Off.Step.Id)}: {(back.Fact.By.Length > 0 ? $"signed by {back.Fact.By}: {back.Fact.Why}" : "nobody has signed for it")}",
                OpenPlace.Back,
                back.Off.Step.Id
            );
        }
    }

    private static IEnumerable<OpenThing> Repairs(JudgedUnit judged)
    {
        if (judged.Unit.All<Billed>().LastOrDefault().Fact is { IsEnded: true } ended)
            yield return new(
                OpenWeight.Failed,
                "The repair was ended",
                $"{Sentences.Whole(ended.EndedWhy)} Do not plug it in.",
                OpenPlace.Findings,
                ""
            );
        foreach (var found in judged.Unit.Unrepaired)
            yield return new(
                OpenWeight.ToKnow,
                PartNames.Headline(judged.Sheet, found.Element, found.Mode),
                "found and not repaired",
                OpenPlace.Findings,
                found.Element
            );
    }
}

/// <summary>How much an open thing weighs.</summary>
public enum OpenWeight
{
    /// <summary>Looked at or measured, and bad.</summary>
    Failed,

    /// <summary>Not done.</summary>
    ToDo,

    /// <summary>Somebody signed for it.</summary>
    Waived,

    /// <summary>No bar, but the owner is to know it.</summary>
    ToKnow,
}

/// <summary>Where an open thing is put right.</summary>
public enum OpenPlace
{
    /// <summary>The look-over.</summary>
    LookOver,

    /// <summary>A reading.</summary>
    Reading,

    /// <summary>The tests.</summary>
    Tests,

    /// <summary>The wiring record.</summary>
    Wiring,

    /// <summary>The wiring check.</summary>
    Check,

    /// <summary>Putting together.</summary>
    Back,

    /// <summary>The findings.</summary>
    Findings,
}
