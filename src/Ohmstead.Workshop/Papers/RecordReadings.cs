using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The readings in the service record: those that count now, those before the last repair, those not taken.</summary>
internal static class RecordReadings
{
    public static IEnumerable<Block> Blocks(JudgedUnit judged)
    {
        yield return new Heading("Readings", 1);
        var taken = judged.Lines.Where(l => l.IsTaken).ToList();
        if (taken.Count == 0)
            yield return new Prose("No reading was taken on the unit as it is now.");
        else
        {
            yield return new Prose(
                $"“Should read” holds 19 of 20 sound units, at the line voltage, load and meter of that reading. {Days(taken)} {Meters(taken)}",
                Size.Small
            );
            yield return Rows(taken);
        }
        var open = judged.Lines.Where(l => !l.IsTaken && l.Waiver is null).ToList();
        if (open.Count > 0)
        {
            yield return new Heading("Not taken", 2);
            yield return new Points([.. open.Select(l => l.Why.Length > 0 ? $"{l.Title}: {l.Why}" : l.Title)], Size.Small);
        }
        if (judged.LookedAt is { } looked)
        {
            yield return new Heading("Wiring that no reading shows, looked at by eye", 2);
            yield return new Prose($"{looked.LookedAt.TrimEnd('.')}. By {looked.By}.", Size.Small);
        }
        if (judged.Earlier.Length > 0)
        {
            yield return new Heading("Read before the last change of a part", 2);
            yield return Rows(judged.Earlier);
        }
        yield return new Heading("Limits this shop works by", 2);
        yield return Limits(judged);
    }

    private static Table Limits(JudgedUnit judged) =>
        new(
            [new("Limit", 6), new("Value", 2, IsFigure: true), new("Here", 2.6), new("Source", 3.4), new("Looked at", 2)],
            [
                .. judged.Shop.Limits.Select(l =>
                    Row.Of(
                        l.Title,
                        Limit(l),
                        RecordTests.UseOf(judged, l) ?? ShopLimits.UseOf(judged.Sheet, l),
                        l.Source,
                        l.Date.Length > 0 ? l.Date : "no date"
                    )
                ),
            ]
        );

    private static Table Rows(IEnumerable<ReadingLine> lines) =>
        new(
            [new("Reading", 7), new("Should read", 3.4, IsFigure: true), new("Read", 2.8, IsFigure: true), new("Verdict", 4.4)],
            [.. lines.Select(l => new Row([l.Title, l.Expected, l.Measured, l.Verdict], l.Weight, l.Conditions))]
        );

    private static string Limit(ShopLimit limit) =>
        limit.Unit == "Ω" ? ValueText.Of(limit.Value, Quantity.Ohms) : $"{ShopEdit.Show(limit.Value)} {limit.Unit}";

    private static string Days(IReadOnlyList<ReadingLine> lines)
    {
        var days = lines.Where(l => l.At is not null).Select(l => l.At!.Value).Order().ToList();
        if (days.Count == 0)
            return "";
        var (first, last) = (PaperParts.Day(days[0]), PaperParts.Day(days[^1]));
        return first == last ? $"Read {last}." : $"Read {first} to {last}.";
    }

    private static string Meters(IEnumerable<ReadingLine> lines)
    {
        var names = lines.Select(l => l.Meter).Where(m => m.Length > 0).Distinct(StringComparer.Ordinal).ToList();
        return names.Count switch
        {
            0 => "",
            1 => $"Meter: {names[0]}.",
            _ => $"Meters: {string.Join("; ", names)}.",
        };
    }
}
