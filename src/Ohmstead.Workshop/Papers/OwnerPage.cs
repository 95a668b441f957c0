using System.Collections.Immutable;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The owner's page: what goes home with the unit, one page in large type.</summary>
public static class OwnerPage
{
    /// <summary>Its name in <see cref="Journal.PaperMade"/> and in addresses.</summary>
    public const string Id = "owner-page";

    /// <summary>How many rows of each list there are to choose from: the setter takes the most that fit on one page.</summary>
    public static ImmutableArray<int> Choices { get; } = [5, 4, 3, 2, 1, 0];

    /// <summary>Pairs of posts that there is room for.</summary>
    private const int MostOutlets = 5;

    /// <summary>Words of others are cut to this many letters a row.</summary>
    private const int MostLetters = 110;

    /// <summary>The page, with at most so many rows of each list.</summary>
    public static Paper Make(JudgedUnit judged, int most) =>
        new("Owner’s page", judged.Unit.Card.Tag, Advice.Foot, [.. Blocks(judged, most)]) { IsLarge = true };

    private static IEnumerable<Block> Blocks(JudgedUnit judged, int most)
    {
        var card = judged.Unit.Card;
        yield return new Masthead(judged.MayBePluggedIn ? "Your unit is back" : "Do not plug this unit in", Cut(card.Tag, 24));
        yield return new Prose(string.Join(' ', Who(judged)));
        if (!judged.MayBePluggedIn)
            yield return new Notice(Weight.Stop, "Open when this page was made", Some(OwnerFacts.OpenNow(judged), most + 2));
        if (OwnerFacts.WrongAndDone(judged) is { IsEmpty: false } done)
        {
            yield return new Heading("What was wrong, and what was done", 2);
            yield return new Points(Some(done, most));
        }
        if (OwnerFacts.StillToDo(judged) is { IsEmpty: false } open)
        {
            yield return new Heading("Still to do", 2);
            yield return new Points(Some(open, Math.Min(most, 2)));
        }
        if (judged.MayBePluggedIn)
            foreach (var block in Working(judged, most))
                yield return block;
        yield return new Notice(
            Weight.Stop,
            "Mains inside. Mains can kill.",
            [judged.MayBePluggedIn ? Advice.OwnerCaution : Advice.OwnerCautionUnplugged, CautionTable.LocalCodes]
        );
        if (judged.MayBePluggedIn)
            yield return new Prose(Advice.GoodHabit);
    }

    private static IEnumerable<string> Who(JudgedUnit judged)
    {
        var card = judged.Unit.Card;
        if (judged.Shop.Name.Length > 0)
            yield return $"{Cut(judged.Shop.Name, 60)}, {PaperParts.Day(judged.At)}.";
        else
            yield return $"{PaperParts.Day(judged.At)}.";
        yield return $"{Cut(OwnerFacts.Title(judged).TrimEnd('.'), 70)}.";
        if (card.Owner.Length > 0)
            yield return $"For {Cut(card.Owner, 60)}.";
        if (OwnerFacts.Said(judged) is { Length: > 0 } said)
            yield return $"You said: “{Cut(said, MostLetters)}”";
    }

    private static IEnumerable<Block> Working(JudgedUnit judged, int most)
    {
        var tested = OwnerFacts.Tested(judged);
        yield return new Heading(
            OwnerFacts.TestedOn(judged) is var day && day == PaperParts.Day(judged.At)
                ? "What was tested"
                : $"What was tested, last on {day}",
            2
        );
        if (tested.Length > 0)
            yield return new Table(
                [new("", 6), new("", 2.2, IsFigure: true), new("", 3.8)],
                [.. tested.Take(Math.Clamp(most, 2, 4)).Select(l => Row.Of(Cut(l.Title, 60), l.Measured, OwnerFacts.Outcome(judged, l)))]
            );
        yield return new Prose(string.Join(' ', AboutTested(judged, most)));
        yield return new Heading("What it can run for hours", 2);
        if (judged.Rating.UsableWatts <= 0)
        {
            yield return new Prose("Not known: the type sheet has no rating.");
            yield break;
        }
        var shown = judged.Outlets.Take(MostOutlets).ToList();
        if (judged.Layout is { } layout)
            yield return new Bars([.. layout.Posts.Take(MostOutlets).Select(Used)]);
        else if (shown.Count > 0)
            yield return new Table([new("", 4.2), new("", 1.6, IsFigure: true), new("", 5.4), new("", 4.4)], [.. shown.Select(Run)]);
        yield return new Prose(string.Join(' ', AboutRun(judged, shown)));
    }

    /// <summary>A pair of posts as a row; how its amps were found is in the service record.</summary>
    private static Row Run(Outlet outlet) =>
        Row.Of(
            Cut(outlet.Posts, 40),
            outlet.Most,
            $"{outlet.Held}{(outlet.Limit.IsEstimated ? "*" : "")}",
            outlet.FuseOutside.Length > 0 ? $"fuse outside: {outlet.FuseOutside}" : ""
        );

    private static Bar Used(PostBudget post) =>
        new(
            Cut(post.Supply.Outlet.Posts, 40),
            post.Load.Amps / post.Supply.Outlet.MostAmps,
            LayoutWords.Amps(post) + (post.Supply.Outlet.Limit.IsEstimated ? "*" : ""),
            LayoutWords.Fuse(post)
        );

    private static IEnumerable<string> AboutTested(JudgedUnit judged, int most)
    {
        if (OwnerFacts.NotNormal(judged) is { IsEmpty: false } off)
            yield return $"Not normal: {string.Join("; ", Some(off, Math.Min(most, 1)))}.";
        if (judged.Doubts.FirstOrDefault(d => d.Weakens) is { } doubt)
            yield return $"Not settled: {Sentences.Small(doubt.Headline)}.";
        if (OwnerFacts.NotJudged(judged) is { IsEmpty: false } doubted)
            yield return $"Doubted and not judged: {string.Join("; ", Some(doubted, Math.Min(most, 1)))}.";
        if (OwnerFacts.SignedFor(judged) is { IsEmpty: false } signed)
            yield return $"Not measured: {string.Join("; ", Some(signed, Math.Min(most, 1)))}.";
        yield return Advice.NotTestedShort;
    }

    private static IEnumerable<string> AboutRun(JudgedUnit judged, IReadOnlyList<Outlet> shown)
    {
        yield return $"All posts together: {ValueText.Plain(Math.Floor(judged.Rating.UsableWatts))} W.";
        if (judged.Outlets.Length > shown.Count)
            yield return "More posts: see the service record.";
        if (judged.Layout is { } layout)
            yield return layout.Answer.Fits
                ? "Black: what you said you run. Put that fuse in the post’s lead, no larger."
                : "Black: what you said you run. It is too much: take something off.";
        else if (shown.Any(o => o.FuseOutside.Length > 0))
            yield return "Fuse outside: no more amps, in that post’s lead.";
        if (shown.Any(o => o.Limit.IsEstimated))
            yield return $"* {Sentences.Large(Outlet.Estimated)}.";
    }

    /// <summary>The first few, and how many more there are; one more takes no more room than to say so.</summary>
    private static ImmutableArray<string> Some(ImmutableArray<string> all, int most) =>
        all.Length <= most + 1
            ? [.. all.Select(w => Cut(w, MostLetters))]
            : [.. all.Take(most).Select(w => Cut(w, MostLetters)), $"and {ValueText.Plain(all.Length - most)} more in the service record"];

    private static string Cut(string words, int most)
    {
        var line = string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= most ? line : $"{line[..most].TrimEnd()}…";
    }
}
