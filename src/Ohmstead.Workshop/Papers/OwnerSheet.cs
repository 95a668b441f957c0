using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The first page of the service record: what the owner takes home.</summary>
internal static class OwnerSheet
{
    public static IEnumerable<Block> Blocks(PaperMatter matter)
    {
        var card = matter.Unit.Card;
        yield return PaperParts.Letterhead(
            matter,
            [
                new("Tag", card.Tag),
                .. card.Owner.Length > 0 ? new[] { new Pair("For", card.Owner) } : [],
                new("Dates", $"taken in {PaperParts.Day(matter.Unit.Journal[0].At)}, printed {PaperParts.Day(matter.At)}"),
            ]
        );
        foreach (var block in PaperParts.Warnings(matter))
            yield return block;
        yield return new Sides(
            [
                new Heading("What was wrong", 2),
                new Points(Wrong(matter)),
                new Heading("What was done", 2),
                new Points(OwnerFacts.Done(matter) is { IsEmpty: false } done ? done : ["No part was changed."]),
                .. OwnerFacts.StillToDo(matter) is { IsEmpty: false } left
                    ? new Block[] { new Heading("Still to do", 2), new Points(left) }
                    : [],
                new Heading("Cautions", 2),
                new Points(Advice.Cautions),
            ],
            [
                .. CanRun(matter),
                new Heading("What was not tested", 2),
                new Points(OwnerFacts.NotTested(matter, "They are listed under Readings.")),
                .. matter.MayBePluggedIn ? new Block[] { new Heading("How to use it", 2), new Points(Advice.Use) } : [],
            ]
        );
        yield return new Signatures(["For the bench, date", "Received, date"]);
    }

    private static ImmutableArray<string> Wrong(PaperMatter matter)
    {
        var said = matter.Unit.Card.Complaint.Trim();
        var found = matter
            .Unit.All<FindingJudged>()
            .GroupBy(j => (j.Fact.Element, j.Fact.Mode))
            .Select(g => g.Last().Fact)
            .Where(j => j.Judgement == Judgement.Confirmed)
            .Select(j => $"Found: {PartNames.Headline(matter.Sheet, j.Element, j.Mode)}{PaperParts.After(j.Words)}.");
        ImmutableArray<string> all = [.. said.Length > 0 ? new[] { $"Owner says: “{said}”" } : [], .. found];
        return all.Length > 0 ? all : ["No complaint is written down, and no fault was confirmed."];
    }

    private static IEnumerable<Block> CanRun(PaperMatter matter)
    {
        if (!matter.MayBePluggedIn)
            yield break;
        yield return new Heading("What it can run", 2);
        var rating = matter.Rating;
        if (rating.UsableWatts <= 0)
        {
            yield return new Prose("Not known: the type sheet has no rating.");
            yield break;
        }
        var printed = rating.InputWatts > 0 ? $" The {ValueText.Plain(rating.InputWatts)} W on its plate is what it takes in." : "";
        yield return new Prose($"All posts together: {ValueText.Plain(Math.Floor(rating.UsableWatts))} W for hours.{printed}");
        if (matter.Outlets.Length == 0)
            yield break;
        yield return new Points([
            .. matter.Outlets.Select(o =>
                $"{o.Posts}: {o.Most}, {o.HeldInFull}.{(o.FuseOutside.Length > 0 ? $" Put a fuse of at most {o.FuseOutside} outside." : "")}"
            ),
        ]);
    }

    /// <summary>The same in full: each pair of posts with its volts under that load.</summary>
    public static IEnumerable<Block> CanRunInFull(PaperMatter matter)
    {
        if (!matter.MayBePluggedIn || matter.Outlets.Length == 0)
            yield break;
        yield return new Heading("What it can run for hours", 2);
        yield return new Table(
            [new("Posts", 6), new("No load", 2, IsFigure: true), new("At most", 2, IsFigure: true), new("Volts then", 2, IsFigure: true)],
            [
                .. matter.Outlets.Select(o => new Row(
                    [o.Posts, Volts(o.Limit.IdleVolts), o.Most, Volts(o.Limit.LoadedVolts)],
                    Weight.None,
                    string.Join(
                        ". ",
                        new[] { Sentences.Large(o.Setting), Sentences.Large(o.HeldInFull), o.Outside }.Where(w => w.Length > 0)
                    )
                )),
            ],
            Size.Usual
        );
        yield return new Prose("Worked out from the type sheet, for one pair of posts alone with a resistor on it.", Size.Small);
    }

    private static string Volts(double volts) => string.Create(CultureInfo.InvariantCulture, $"{volts:0.0} V");
}
