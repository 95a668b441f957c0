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

    /// <summary>Words of others are cut to this many letters a row, half as many again in a language that may be wordier.</summary>
    private const int MostLetters = 110;

    /// <summary>The page, with at most so many rows of each list.</summary>
    /// <param name="language">Its language; null for English.</param>
    public static Paper Make(JudgedUnit judged, int most, PageLanguage? language = null) => Page(judged, most, language, new(language));

    /// <summary>What the page of a unit says in English because its language lacks it: the keys, in the order of the page.</summary>
    public static ImmutableArray<string> Missing(JudgedUnit judged, PageLanguage language)
    {
        var say = new PageSpeaker(language);
        _ = Page(judged, Choices[0], language, say);
        return say.Missing;
    }

    private static Paper Page(JudgedUnit judged, int most, PageLanguage? language, PageSpeaker say) =>
        new(say.Name("Owner’s page"), judged.Unit.Card.Tag, say.Name(Advice.Foot), [.. Blocks(judged, most, say)])
        {
            IsLarge = true,
            Language = language?.Code ?? "en",
        };

    private static IEnumerable<Block> Blocks(JudgedUnit judged, int most, PageSpeaker say)
    {
        var card = judged.Unit.Card;
        yield return new Masthead(
            judged.MayBePluggedIn ? say.Name("Your unit is back") : say.Caution(s => s.Name("Do not plug this unit in")),
            Cut(card.Tag, 24)
        );
        yield return new Prose(string.Join(' ', Who(judged, say)));
        if (!judged.MayBePluggedIn)
            yield return new Notice(
                Weight.Stop,
                say.Caution(s => s.Name("Open when this page was made")),
                say.Cautions(s => Some(OwnerFacts.OpenNow(judged, s), most + 2, s))
            );
        if (OwnerFacts.WrongAndDone(judged, say) is { IsEmpty: false } done)
        {
            yield return new Heading(say.Name("What was wrong, and what was done"), 2);
            yield return new Points(Some(done, most, say));
        }
        if (OwnerFacts.StillToDo(judged, say) is { IsEmpty: false } open)
        {
            yield return new Heading(say.Name("Still to do"), 2);
            yield return new Points(Some(open, Math.Min(most, 2), say));
        }
        if (judged.MayBePluggedIn)
            foreach (var block in Working(judged, most, say))
                yield return block;
        yield return new Notice(
            Weight.Stop,
            say.Caution(s => s.Name("Mains inside. Mains can kill.")),
            say.Cautions(s =>
                [s.Name(judged.MayBePluggedIn ? Advice.OwnerCaution : Advice.OwnerCautionUnplugged), s.Name(CautionTable.LocalCodes)]
            )
        );
        if (judged.MayBePluggedIn)
            yield return new Prose(say.Name(Advice.GoodHabit));
    }

    private static IEnumerable<string> Who(JudgedUnit judged, PageSpeaker say)
    {
        var card = judged.Unit.Card;
        if (judged.Shop.Name.Length > 0)
            yield return $"{Cut(judged.Shop.Name, 60)}, {say.Day(judged.At)}.";
        else
            yield return $"{say.Day(judged.At)}.";
        yield return $"{Cut(OwnerFacts.Title(judged).TrimEnd('.'), 70)}.";
        if (OwnerFacts.MadeIn(judged, say) is { Length: > 0 } made)
            yield return made;
        if (card.Owner.Length > 0)
            yield return say.Say($"For {Cut(card.Owner, 60)}.");
        if (OwnerFacts.Said(judged) is { Length: > 0 } said)
            yield return say.Say($"You said: “{Cut(said, MostLetters)}”");
    }

    private static IEnumerable<Block> Working(JudgedUnit judged, int most, PageSpeaker say)
    {
        var (tested, day) = (OwnerFacts.Tested(judged), say.Day(OwnerFacts.TestedOn(judged)));
        yield return new Heading(day == say.Day(judged.At) ? say.Name("What was tested") : say.Say($"What was tested, last on {day}"), 2);
        if (tested.Length > 0)
            yield return new Table(
                [new("", 6), new("", 2.2, IsFigure: true), new("", 3.8)],
                [
                    .. tested
                        .Take(Math.Clamp(most, 2, 4))
                        .Select(l => Row.Of(Cut(say.Name(l.Title), 60), l.Measured, OwnerFacts.Outcome(judged, l, say))),
                ]
            );
        yield return new Prose(string.Join(' ', AboutTested(judged, most, say)));
        yield return new Heading(say.Name("What it can run for hours"), 2);
        if (judged.Rating.UsableWatts <= 0)
        {
            yield return new Prose(say.Name("Not known: the type sheet has no rating."));
            yield break;
        }
        var shown = judged.Outlets.Take(MostOutlets).ToList();
        if (judged.Layout is { } layout)
            yield return new Bars([.. layout.Posts.Take(MostOutlets).Select(p => Used(p, say))]);
        else if (shown.Count > 0)
            yield return new Table(
                [new("", 4.2), new("", 1.6, IsFigure: true), new("", 5.4), new("", 4.4)],
                [.. shown.Select(o => Run(o, say))]
            );
        yield return new Prose(string.Join(' ', AboutRun(judged, shown, say)));
    }

    /// <summary>A pair of posts as a row; how its amps were found is in the service record.</summary>
    private static Row Run(Outlet outlet, PageSpeaker say) =>
        Row.Of(
            Cut(say.Name(outlet.Posts), 40),
            outlet.Most,
            $"{say.Name(outlet.Held)}{(outlet.IsEstimated ? "*" : "")}",
            outlet.FuseOutside.Length > 0 ? say.Say($"fuse outside: {outlet.FuseOutside}") : ""
        );

    private static Bar Used(PostBudget post, PageSpeaker say) =>
        new(
            Cut(say.Name(post.Supply.Outlet.Posts), 40),
            post.Load.Amps / post.MostAmps,
            say.Name(LayoutWords.Amps(post)) + (post.Supply.Outlet.IsEstimated ? "*" : ""),
            say.Name(LayoutWords.Fuse(post))
        );

    private static IEnumerable<string> AboutTested(JudgedUnit judged, int most, PageSpeaker say)
    {
        string List(ImmutableArray<string> all) => string.Join("; ", Some(all, Math.Min(most, 1), say));
        if (OwnerFacts.NotNormal(judged, say) is { IsEmpty: false } off)
            yield return say.Say($"Not normal: {List(off)}.");
        if (judged.Doubts.FirstOrDefault(d => d.Weakens) is { } doubt)
            yield return say.Say($"Not settled: {say.Name(Sentences.Small(doubt.Headline))}.");
        if (OwnerFacts.NotJudged(judged, say) is { IsEmpty: false } doubted)
            yield return say.Say($"Doubted and not judged: {List(doubted)}.");
        if (OwnerFacts.SignedFor(judged, say) is { IsEmpty: false } signed)
            yield return say.Say($"Not measured: {List(signed)}.");
        yield return say.Name(Advice.NotTestedShort);
    }

    private static IEnumerable<string> AboutRun(JudgedUnit judged, IReadOnlyList<Outlet> shown, PageSpeaker say)
    {
        yield return say.Say($"All posts together: {ValueText.Plain(Math.Floor(judged.Rating.UsableWatts))} W.");
        if (judged.Outlets.Length > shown.Count)
            yield return say.Name("More posts: see the service record.");
        if (judged.Layout is { } layout)
            yield return say.Caution(s =>
                s.Name(
                    layout.Answer.Fits
                        ? "Black: what you said you run. Put that fuse in the post’s lead, no larger."
                        : "Black: what you said you run. It is too much: take something off."
                )
            );
        else if (shown.Any(o => o.FuseOutside.Length > 0))
            yield return say.Caution(s => s.Name("Fuse outside: no more amps, in that post’s lead."));
        if (shown.Any(o => o.IsEstimated))
            yield return $"* {Sentences.Large(say.Name(Outlet.Estimated))}.";
    }

    /// <summary>The first few, and how many more there are; one more takes no more room than to say so.</summary>
    private static ImmutableArray<string> Some(ImmutableArray<string> all, int most, PageSpeaker say)
    {
        var letters = say.IsEnglish ? MostLetters : MostLetters * 3 / 2;
        var first = all.Take(all.Length <= most + 1 ? all.Length : most).Select(w => Cut(w, letters)).ToImmutableArray();
        return first.Length == all.Length
            ? first
            : first.Add(say.Say($"and {ValueText.Plain(all.Length - most)} more in the service record"));
    }

    private static string Cut(string words, int most)
    {
        var line = string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= most ? line : $"{line[..most].TrimEnd()}…";
    }
}
