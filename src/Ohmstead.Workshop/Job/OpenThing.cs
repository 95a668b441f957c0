using System.Collections.Immutable;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Readings;
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
    public static ImmutableArray<OpenThing> All(PaperMatter matter) =>
        [.. Known(matter), .. Dangers(matter), .. Checks(matter), .. Wires(matter), .. Pieces(matter), .. Repairs(matter)];

    private static IEnumerable<OpenThing> Known(PaperMatter matter)
    {
        if (matter.Sheet is null || UntypedIds.IsOne(matter.Sheet))
            yield return new(
                OpenWeight.ToDo,
                "Type not known",
                "Nothing was tested on mains: that takes a type sheet.",
                OpenPlace.LookOver,
                ""
            );
    }

    private static IEnumerable<OpenThing> Dangers(PaperMatter matter) =>
        Endangering
            .All(matter.Unit, matter.Sheet, matter.Shop)
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

    private static IEnumerable<OpenThing> Checks(PaperMatter matter)
    {
        foreach (var line in matter.Failed)
            yield return new(
                OpenWeight.Failed,
                line.Title,
                $"failed: it read {line.Measured}. {Sentences.Large(line.Limits)}",
                OpenPlace.Reading,
                line.Id
            );
        foreach (var line in matter.TooClose)
            yield return new(
                OpenWeight.ToDo,
                line.Title,
                $"too close for the meter: it read {line.Measured}. {Sentences.Large(line.Limits)}",
                OpenPlace.Reading,
                line.Id
            );
        foreach (var line in matter.Doubted)
            yield return new(
                OpenWeight.ToDo,
                line.Title,
                $"To be read again. It read {line.Measured}: {line.Verdict}.",
                OpenPlace.Reading,
                line.Id
            );
        foreach (var heat in matter.Heat)
            yield return new(
                OpenWeight.ToDo,
                "Find what makes the extra heat",
                $"{heat}. {BenchDoubt.NotReturned}",
                OpenPlace.Findings,
                ""
            );
        foreach (var doubt in matter.Doubts.Where(d => d.Weakens))
            yield return new(OpenWeight.ToKnow, doubt.Headline, $"{doubt.Do} {BenchDoubt.CountLess}", OpenPlace.Findings, "");
        foreach (var line in matter.Slipped)
            yield return new(
                OpenWeight.ToKnow,
                line.Title,
                $"To be read again. It read {line.Measured}: {line.Verdict}.",
                OpenPlace.Reading,
                line.Id
            );
        foreach (var line in matter.Skipped)
            yield return new(OpenWeight.ToDo, line.Title, "to do", OpenPlace.Reading, line.Id);
        foreach (var line in matter.Waived)
            yield return new(
                OpenWeight.Waived,
                line.Title,
                $"waived by {line.Waiver!.WaivedBy}: {line.Waiver.Why}",
                OpenPlace.Reading,
                line.Id
            );
    }

    private static IEnumerable<OpenThing> Wires(PaperMatter matter)
    {
        foreach (var wrong in matter.WrongEnds)
            yield return new(
                OpenWeight.Failed,
                Sentences.Large(WireEnds.Said(wrong.End, matter.Sheet!)),
                $"on {PartNames.Terminal(matter.Sheet!, wrong.Seen)}, should be on {PartNames.Terminal(matter.Sheet!, wrong.Planned)}",
                OpenPlace.Wiring,
                wrong.End
            );
        if (matter.Apart is { LooseWires.IsEmpty: false } apart)
            yield return new(
                OpenWeight.ToDo,
                "Loose wires",
                string.Join(", ", apart.LooseWires.Select(w => PartNames.Of(matter.Sheet!, w))),
                OpenPlace.Back,
                ""
            );
        if (matter.WaitsForCheck)
            yield return new(OpenWeight.ToDo, "Wiring check", "A wire was moved. The check has not passed.", OpenPlace.Check, "");
    }

    private static IEnumerable<OpenThing> Pieces(PaperMatter matter)
    {
        if (matter.Apart is not { } apart)
            yield break;
        foreach (var off in apart.Off)
            yield return new(
                OpenWeight.ToDo,
                Sentences.Large(PartNames.Step(matter.Sheet, off.Step.Id)),
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
                $"{PartNames.Step(matter.Sheet, back.Off.Step.Id)}: {(back.Fact.By.Length > 0 ? $"signed by {back.Fact.By}: {back.Fact.Why}" : "nobody has signed for it")}",
                OpenPlace.Back,
                back.Off.Step.Id
            );
        }
    }

    private static IEnumerable<OpenThing> Repairs(PaperMatter matter) =>
        CardOf
            .Unrepaired(matter.Unit)
            .Select(f => new OpenThing(
                OpenWeight.ToKnow,
                PartNames.Headline(matter.Sheet, f.Element, f.Mode),
                "found and not repaired",
                OpenPlace.Findings,
                f.Element
            ));
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

    /// <summary>The wiring record.</summary>
    Wiring,

    /// <summary>The wiring check.</summary>
    Check,

    /// <summary>Putting together.</summary>
    Back,

    /// <summary>The findings.</summary>
    Findings,
}
