using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The service record: the owner's sheet first, then everything that was found, done and read.</summary>
public static class ServiceRecord
{
    /// <summary>Its name in <see cref="PaperMade"/> and in addresses.</summary>
    public const string Id = PaperMade.ServiceRecord;

    /// <summary>The record of a unit.</summary>
    public static Paper Make(JudgedUnit judged) =>
        new(
            "Service record",
            judged.Unit.Card.Tag,
            Advice.Foot,
            [
                .. OwnerSheet.Blocks(judged),
                new NewPage(),
                .. Found(judged),
                .. RecordReadings.Blocks(judged),
                .. RecordTests.Blocks(judged),
                .. CircuitOf(judged),
                .. Pictures(judged),
            ]
        );

    private static IEnumerable<Block> Found(JudgedUnit judged)
    {
        yield return new Heading("Found and done", 1);
        foreach (var block in PaperParts.Warnings(judged))
            yield return block;
        yield return new Prose(CautionTable.LocalCodes, Size.Small);
        var findings = Findings(judged);
        if (findings.Length > 0)
            yield return new Table([new("Finding", 5), new("Marked", 3), new("In words", 6)], findings, Size.Usual);
        else
            yield return new Prose("No finding was marked, and no part changed.");
        if (PaperParts.Conditions(judged) is { Length: > 0 } conditions)
        {
            yield return new Heading("Look-over", 2);
            yield return new Table([new("Part", 3), new("Seen", 7), new("Decided", 3)], conditions, Size.Usual);
        }
        foreach (var block in HowOld(judged))
            yield return block;
        if (judged.Apart is { IsBegun: true } apart)
        {
            yield return new Heading("Taken apart and put together", 2);
            yield return new Prose(CupsText.Of(apart));
        }
        foreach (var block in OwnerSheet.CanRunInFull(judged))
            yield return block;
        if (Hum(judged) is { IsEmpty: false } hum)
        {
            yield return new Heading("Hum, recorded with a phone", 2);
            yield return new Points(hum);
        }
        var notes = judged.Unit.All<Noted>().Where(n => n.Fact.Words.Length > 0).ToList();
        if (notes.Count == 0)
            yield break;
        yield return new Heading("Notes", 2);
        yield return new Points([.. notes.Select(n => $"{PaperParts.Day(n.Entry.At)}: {n.Fact.Words}")]);
    }

    private static IEnumerable<Block> HowOld(JudgedUnit judged)
    {
        if (judged.Dated is not { IsSeen: true } dated)
            yield break;
        yield return new Heading("How old it is", 2);
        yield return new Table(
            [new("Detail", 3), new("Seen", 5), new("Chance that it was swapped later", 5)],
            [.. dated.Details.Where(l => l.Argues is not null).Select(l => Row.Of(l.Detail.Title, l.Words, l.Swapped))],
            Size.Usual
        );
        yield return new Prose(dated.Sentence);
    }

    private static ImmutableArray<string> Hum(JudgedUnit judged) =>
        [
            .. judged
                .Unit.All<HumRecorded>()
                .GroupBy(h => h.Fact.As)
                .OrderBy(g => g.Key)
                .Select(g => g.Last())
                .Select(h =>
                    $"{Sentences.Large(HumRecorded.Said(h.Fact.As))}, {PaperParts.Day(h.Entry.At)}: {string.Join(", ", h.Fact.Heard)}. How loud it is decides no fault."
                ),
        ];

    private static ImmutableArray<Row> Findings(JudgedUnit judged)
    {
        var rows = ImmutableArray.CreateBuilder<Row>();
        foreach (var (_, said) in judged.Unit.All<FindingJudged>().GroupBy(j => (j.Fact.Element, j.Fact.Mode)).Select(g => g.Last()))
        {
            if (said.Judgement == Judgement.Open)
                continue;
            var name = PartNames.Headline(judged.Sheet, said.Element, said.Mode);
            rows.Add(new Row([name, said.Judgement == Judgement.Confirmed ? "found" : "not this", said.Words]));
        }
        foreach (var (entry, part) in judged.Unit.All<PartChanged>())
            rows.Add(
                new Row([
                    PartNames.Title(judged.Sheet, part.Element),
                    $"{PaperParts.Change(part.Change)}, {PaperParts.Day(entry.At)}",
                    part.Words,
                ])
            );
        return rows.ToImmutable();
    }

    /// <summary>The circuit as it is now, what was renewed marked.</summary>
    private static IEnumerable<Block> CircuitOf(JudgedUnit judged)
    {
        if (judged.Sheet is not { } sheet)
            yield break;
        var renewed = judged
            .Unit.All<PartChanged>()
            .Where(c => c.Fact.Change is PartChange.Renewed or PartChange.Replaced or PartChange.Added)
            .Select(c => c.Fact.Element);
        var overlay = Overlay.None with { Renewed = renewed.ToImmutableHashSet(StringComparer.Ordinal) };
        // What stands in for a type that is not known is no drawing of this unit.
        if (!UntypedIds.IsOne(sheet))
            yield return new Circuit("The circuit", CircuitDrawing.Draw(CircuitLayout.Of(sheet), overlay));
    }

    private static IEnumerable<Block> Pictures(JudgedUnit judged)
    {
        var pins = judged
            .Unit.All<DamagePinned>()
            .GroupBy(d => d.Fact.Photo, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Select(d => d.Fact).ToList(), StringComparer.Ordinal);
        var photos = judged.Unit.All<PhotoAdded>().DistinctBy(p => p.Fact.Photo).ToList();
        if (photos.Count == 0)
            yield break;
        yield return new Heading("Photos", 1);
        yield return new Photos([
            .. photos.Select(
                (p, n) =>
                {
                    var marks = pins.GetValueOrDefault(p.Fact.Photo, []);
                    var title = p.Fact.Title.Length > 0 ? p.Fact.Title : string.Create(CultureInfo.InvariantCulture, $"Photo {n + 1}");
                    var damage = string.Concat(
                        marks.Select((d, k) => string.Create(CultureInfo.InvariantCulture, $"; {k + 1}: {d.Words}"))
                    );
                    return new Photo(p.Fact.Photo, $"{title}, {PaperParts.Day(p.Entry.At)}{damage}", [.. marks.Select(d => (d.X, d.Y))]);
                }
            ),
        ]);
    }
}
