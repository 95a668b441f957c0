using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The first page of the service record: what the owner takes home.</summary>
internal static class OwnerSheet
{
    public static IEnumerable<Block> Blocks(JudgedUnit judged)
    {
        var card = judged.Unit.Card;
        yield return PaperParts.Letterhead(
            judged,
            [
                new("Tag", card.Tag),
                .. card.Owner.Length > 0 ? new[] { new Pair("For", card.Owner) } : [],
                new("Dates", $"taken in {PaperParts.Day(judged.Unit.Journal[0].At)}, printed {PaperParts.Day(judged.At)}"),
            ]
        );
        foreach (var block in PaperParts.Warnings(judged))
            yield return block;
        yield return new Sides(
            [
                new Heading("What was wrong", 2),
                new Points(Wrong(judged)),
                new Heading("What was done", 2),
                new Points(OwnerFacts.Done(judged) is { IsEmpty: false } done ? done : ["No part was changed."]),
                .. OwnerFacts.StillToDo(judged) is { IsEmpty: false } left
                    ? new Block[] { new Heading("Still to do", 2), new Points(left) }
                    : [],
                new Heading("Cautions", 2),
                new Points(Advice.Cautions),
            ],
            [
                .. CanRun(judged),
                new Heading("What was not tested", 2),
                new Points(OwnerFacts.NotTested(judged, "They are listed under Readings.")),
                .. judged.MayBePluggedIn ? new Block[] { new Heading("How to use it", 2), new Points(Advice.Use) } : [],
            ]
        );
        yield return new Signatures(["For the bench, date", "Received, date"]);
    }

    private static ImmutableArray<string> Wrong(JudgedUnit judged)
    {
        var said = judged.Unit.Card.Complaint.Trim();
        var found = judged
            .Unit.All<FindingJudged>()
            .GroupBy(j => (j.Fact.Element, j.Fact.Mode))
            .Select(g => g.Last().Fact)
            .Where(j => j.Judgement == Judgement.Confirmed)
            .Select(j => $"Found: {PartNames.Headline(judged.Sheet, j.Element, j.Mode)}{PaperParts.After(j.Words)}.");
        ImmutableArray<string> all = [.. said.Length > 0 ? new[] { $"Owner says: “{said}”" } : [], .. found];
        return all.Length > 0 ? all : ["No complaint is written down, and no fault was confirmed."];
    }

    private static IEnumerable<Block> CanRun(JudgedUnit judged)
    {
        if (!judged.MayBePluggedIn)
            yield break;
        yield return new Heading("What it can run", 2);
        var rating = judged.Rating;
        if (rating.UsableWatts <= 0)
        {
            yield return new Prose("Not known: the type sheet has no rating.");
            yield break;
        }
        var printed = rating.InputWatts > 0 ? $" The {ValueText.Plain(rating.InputWatts)} W on its plate is what it takes in." : "";
        yield return new Prose($"All posts together: {ValueText.Plain(Math.Floor(rating.UsableWatts))} W for hours.{printed}");
        if (judged.Outlets.Length == 0)
            yield break;
        yield return new Points([
            .. judged.Outlets.Select(o =>
                $"{o.Posts}: {o.Most}, {o.HeldInFull}.{(Yours(judged, o) is { Length: > 0 } yours ? yours : o.FuseOutside.Length > 0 ? $" Put a fuse of at most {o.FuseOutside} outside." : "")}"
            ),
        ]);
    }

    /// <summary>What the owner runs on a pair of posts, and the fuse for it; empty where nothing was said.</summary>
    private static string Yours(JudgedUnit judged, Outlet outlet) =>
        judged.Layout?.Posts.FirstOrDefault(p => p.Supply.Outlet == outlet && !p.Items.IsEmpty) is { } post
            ? $" Yours: {LayoutWords.Items(post)}. {LayoutWords.FuseSentence(post)}"
            : "";

    /// <summary>What the owner runs, in full: amps, fuse, wire, and what is left at the train.</summary>
    private static IEnumerable<Block> OwnersLayout(JudgedUnit judged)
    {
        if (judged.Layout is not { } layout)
            yield break;
        yield return new Heading("What the owner runs", 2);
        yield return new Table(
            [new("Posts", 4), new("On it", 6), new("Draws", 3, IsFigure: true), new("Fuse", 3)],
            [
                .. layout
                    .Posts.Where(p => !p.Items.IsEmpty)
                    .Select(p => new Row(
                        [p.Supply.Outlet.Posts, LayoutWords.Items(p), LayoutWords.Amps(p), LayoutWords.Fuse(p)],
                        Weight.None,
                        $"{LayoutWords.AtTrain(p)} {LayoutWords.Wire(p)} {LayoutShort.Of(p)?.Words}".TrimEnd()
                    )),
            ],
            Size.Usual
        );
        yield return new Prose(
            $"{LayoutWords.Total(layout)}.{(layout.Answer.Fits ? "" : " It is more than the unit may carry for hours: take something off.")} What each draws on average, as usual for it: common practice, no source.",
            Size.Small
        );
    }

    /// <summary>The same in full: each pair of posts with its volts under that load.</summary>
    public static IEnumerable<Block> CanRunInFull(JudgedUnit judged)
    {
        if (!judged.MayBePluggedIn || judged.Outlets.Length == 0)
            yield break;
        yield return new Heading("What it can run for hours", 2);
        yield return new Table(
            [new("Posts", 6), new("No load", 2, IsFigure: true), new("At most", 2, IsFigure: true), new("Volts then", 2, IsFigure: true)],
            [
                .. judged.Outlets.Select(o => new Row(
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
        foreach (var block in OwnersLayout(judged))
            yield return block;
    }

    private static string Volts(double volts) => string.Create(CultureInfo.InvariantCulture, $"{volts:0.0} V");
}
