using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Merging;

/// <summary>A contradiction as a question to a person, with its answers.</summary>
/// <param name="Question">What is asked.</param>
/// <param name="Answers">Two or three, the likely ones first.</param>
public sealed record ContradictionWords(Contradiction About, string Question, ImmutableArray<ContradictionAnswer> Answers)
{
    /// <summary>The question of a contradiction.</summary>
    /// <param name="sheet">The unit's type sheet, for names; null while there is none.</param>
    /// <param name="names">What the benches are called.</param>
    /// <param name="zone">In which times are said.</param>
    public static ContradictionWords Of(Contradiction about, BenchUnit unit, TypeSheet? sheet, BenchNames names, TimeZoneInfo zone)
    {
        string Said(Entry e) =>
            $"{Sentence(e, sheet)} ({names.Of(e.Bench)}, {TimeZoneInfo.ConvertTime(e.At, zone).ToString("d MMM yyyy, HH:mm", CultureInfo.InvariantCulture)})";
        return about.Sort switch
        {
            ContradictionSort.Returned => Returned(about),
            ContradictionSort.SameMinute => new(
                about,
                "Two benches read this in the same minute. The values differ. Which one counts?",
                [.. about.Entries.Select(e => Only(about, e, Said(e))), new("Both count", [Stays(about, "Both readings count")])]
            ),
            ContradictionSort.DoneTwice => new(
                about,
                "Two benches entered this. Was it done once or twice?",
                [.. about.Entries.Select(e => Only(about, e, $"Once: {Said(e)}")), new("Twice", [Stays(about, "It was done twice")])]
            ),
            ContradictionSort.Card => new(
                about,
                "The card was changed at two benches. Which one is right?",
                [.. about.Entries.Select(e => new ContradictionAnswer(Said(e), [e.Fact])), .. Combined(about, unit)]
            ),
            ContradictionSort.Corrected => new(
                about,
                $"Two benches corrected one entry: {Corrected(about, unit, sheet)}. Which one is right?",
                [.. about.Entries.Select(e => new ContradictionAnswer(Said(e), [e.Fact]))]
            ),
            _ => new(
                about,
                "Two benches entered this differently. Which one is right?",
                [.. about.Entries.DistinctBy(e => Registers.Value(e.Fact)).Select(e => new ContradictionAnswer(Said(e), [e.Fact]))]
            ),
        };
    }

    private static ContradictionWords Returned(Contradiction about) =>
        new(
            about,
            "One bench returned this unit. Another worked on it and did not know. Where is the unit now?",
            [
                new("It is back with its owner", [Stays(about, "It is back with its owner")]),
                new("It is on the bench", [new StageClosed(Stage.Papers, false, "")]),
            ]
        );

    private static string Sentence(Entry entry, TypeSheet? sheet) =>
        entry.Fact is CardChanged card
            ? string.Join(
                ", ",
                new[] { $"tag {card.Tag}", card.Owner, card.Contact, card.Complaint, card.Promised }.Where(w => w.Length > 0)
            )
            : FactWords.Of(entry.Fact, sheet);

    private static string Corrected(Contradiction about, BenchUnit unit, TypeSheet? sheet) =>
        unit.Journal.FirstOrDefault(e => e.Id == ((Corrected)about.Entries[0].Fact).EntryId) is { } entry ? Sentence(entry, sheet) : "";

    private static Settled Stays(Contradiction about, string words) => new([.. about.Entries.Select(e => e.Id)], words);

    /// <summary>The others are undone.</summary>
    private static ContradictionAnswer Only(Contradiction about, Entry entry, string words) =>
        new(words, [.. about.Entries.Where(e => e.Id != entry.Id).Select(e => new Corrected(e.Id, null))]);

    /// <summary>Both changes of a card, where they are of different lines.</summary>
    private static ImmutableArray<ContradictionAnswer> Combined(Contradiction about, BenchUnit unit)
    {
        if (about.Entries.Length != 2 || about.Entries[0].Fact is not CardChanged one || about.Entries[1].Fact is not CardChanged other)
            return [];
        var lineage = new Lineage(unit.Journal);
        var before = unit.Standing.Where(e => about.Entries.All(a => a.Id != e.Id && lineage.IsAfter(a.Id, e.Id)));
        var old = UnitHistory.Fold([.. before]).Card;
        var isBoth = false;
        string Line(Func<CardChanged, string> of)
        {
            var (was, mine, theirs) = (of(old), of(one), of(other));
            isBoth |= mine != was && theirs != was && mine != theirs;
            return mine != was ? mine : theirs;
        }
        var both = new CardChanged(
            Line(c => c.Tag),
            Line(c => c.SheetId),
            Line(c => c.Owner),
            Line(c => c.Contact),
            Line(c => c.Complaint),
            Line(c => c.Promised)
        );
        return isBoth || both == one || both == other ? [] : [new("Both: keep what each one changed", [both])];
    }
}

/// <summary>An answer to a contradiction.</summary>
/// <param name="Words">As a person reads it.</param>
/// <param name="Facts">What is entered.</param>
public sealed record ContradictionAnswer(string Words, ImmutableArray<Fact> Facts);
