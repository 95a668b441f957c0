using System.Collections.Immutable;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Job;

namespace Ohmstead.Workshop.Papers;

/// <summary>The bench sheet: large type, every reading with a blank to fill by pencil.</summary>
public static class BenchSheet
{
    /// <summary>Its name in <see cref="Journal.PaperMade"/> and in addresses.</summary>
    public const string Id = "bench-sheet";

    /// <summary>The sheet for a unit.</summary>
    /// <param name="only">Ids of the readings that are wanted; empty for all of the unit's kind.</param>
    public static Paper Make(JudgedUnit judged, ImmutableArray<string> only)
    {
        var lines = only.Length == 0 ? judged.Lines : [.. judged.Lines.Where(l => only.Contains(l.Id, StringComparer.Ordinal))];
        return new("Bench sheet", judged.Unit.Card.Tag, Advice.Foot, [.. Blocks(judged, lines)]);
    }

    private static IEnumerable<Block> Blocks(JudgedUnit judged, ImmutableArray<ReadingLine> lines)
    {
        yield return PaperParts.Letterhead(
            judged with
            {
                Unit = judged.Unit with { Standing = [] },
            },
            [new("Tag", judged.Unit.Card.Tag), new("Printed", PaperParts.Day(judged.At))]
        );
        foreach (var block in PaperParts.Warnings(judged))
            yield return block;
        yield return new Prose(CautionTable.LocalCodes, Size.Small);
        yield return new Table(
            [
                new("Line voltage [V]", 1, IsBlank: true),
                new("Room [°C]", 1, IsBlank: true),
                new("Meter", 2, IsBlank: true),
                new("Who, date", 2, IsBlank: true),
            ],
            [Row.Of("", "", "", "")],
            Size.Usual
        );
        if (lines.Length == 0)
        {
            yield return new Prose(
                judged.Sheet is null ? "Its type is not known. There is no reading to print." : "No reading is to be taken.",
                Size.Large
            );
            yield break;
        }
        if (Cautions(judged, lines) is { IsEmpty: false } cautions)
            yield return new Points(cautions, Size.Small);
        foreach (var (title, part) in Parts(lines))
        {
            yield return new Heading(title, 1);
            yield return new Table(
                [new("Reading", 8), new("Should read", 3.3, IsFigure: true), new("Read", 3.2, IsBlank: true)],
                [.. part.Select(l => new Row([l.Title, l.Expected, ""], Weight.None, Under(l)))],
                Size.Large
            );
        }
        yield return new Heading("Notes", 1);
        yield return new Lines(6);
    }

    /// <summary>What to heed at these readings, each once; what stands under its reading anyway is left out.</summary>
    private static ImmutableArray<string> Cautions(JudgedUnit judged, ImmutableArray<ReadingLine> lines) =>
        [
            .. lines
                .Select(l => judged.Sheet?.FindReading(l.Id))
                .OfType<Electrical.TypeSheets.ReadingSpec>()
                .SelectMany(r => CautionTable.OfReading(r))
                .Distinct()
                .Where(c => !lines.Any(l => CautionTable.Says([c], l.Hazard))),
        ];

    /// <summary>Cold checks first: the others need them.</summary>
    private static IEnumerable<(string Title, List<ReadingLine> Lines)> Parts(ImmutableArray<ReadingLine> lines)
    {
        var (cold, rest) = (lines.Where(l => l.IsGate).ToList(), lines.Where(l => !l.IsGate).ToList());
        if (cold.Count > 0)
            yield return ("Cold checks, unplugged, before all else", cold);
        if (rest.Count > 0)
            yield return (cold.Count > 0 ? "Then" : "Readings", rest);
    }

    private static string Under(ReadingLine line)
    {
        string[] parts =
        [
            line.Probes,
            line.Conditions,
            line.Limits.Length > 0 ? $"Passes inside {line.Limits}" : "",
            line.Hazard.Length > 0 ? $"Caution: {line.Hazard}" : "",
        ];
        return string.Join(" · ", parts.Where(p => p.Length > 0));
    }
}
