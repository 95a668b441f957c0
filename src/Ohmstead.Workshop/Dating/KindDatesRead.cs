using System.Collections.Immutable;
using System.Text.Json;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Dating;

/// <summary>What dates a type, as it was read; what is left out has the meaning that the question <c>dating</c> gives it.</summary>
/// <param name="Dates">Sound; null where it cannot be used.</param>
/// <param name="Problem">Why it cannot be used, in words; empty where it can.</param>
/// <param name="IsOne">True where the text says that it is of years and details, whatever it holds.</param>
public sealed record KindDatesRead(KindDates? Dates, string Problem, bool IsOne)
{
    private const string Broken = "It is no text of years and details, or a later version of this program wrote it: use that one.";

    /// <summary>Of a text.</summary>
    public static KindDatesRead Of(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<KindDates>(text, FactText.Options) is { Ohmstead: KindDates.Mark } dates
                ? Of(dates) with
                {
                    IsOne = IsMarked(text),
                }
                : new(null, Broken, IsMarked(text));
        }
        catch (JsonException)
        {
            return new(null, Broken, IsMarked(text));
        }
    }

    /// <summary>Of what was read as a part of something else.</summary>
    public static KindDatesRead Of(KindDates dates)
    {
        if (dates.Ohmstead != KindDates.Mark)
            return new(null, Broken, true);
        var wrong = WrongWith(dates);
        return wrong.Length > 0
            ? new(null, wrong, true)
            : new(dates with { Type = dates.Type ?? "", Details = [.. dates.Details.Select(Filled)] }, "", true);
    }

    private static DateDetail Filled(DateDetail detail) =>
        detail with
        {
            Where = detail.Where ?? "",
            With = detail.With ?? "",
            // What comes with another detail is rarely swapped a second time, alone.
            SwappedPercent = double.IsNaN(detail.SwappedPercent) ? 0 : detail.SwappedPercent,
        };

    private static string WrongWith(KindDates dates)
    {
        if (dates.Details.IsDefault)
            return "It has no details.";
        if (dates.Details.Length > DatesEdit.MostOfEach)
            return $"It has more than {DatesEdit.Show(DatesEdit.MostOfEach)} details.";
        if (dates.Details.Any(d => d is not { Id.Length: > 0, Title: not null, Variants.IsDefault: false }))
            return "A detail has no id, no title or no variants.";
        if (Twice(dates.Details.Select(d => d.Id)) is { } detail)
            return $"Two details have the id \"{detail}\".";
        if (dates.Said?.All(s => s is { IsSound: true }) == false)
            return "Its list of earlier changes is damaged, or a later version of Ohmstead wrote it: use that one.";
        return dates.Details.Select(WrongWith).FirstOrDefault(w => w.Length > 0) ?? "";
    }

    private static string WrongWith(DateDetail detail) =>
        double.IsNaN(detail.SwappedPercent) && string.IsNullOrEmpty(detail.With) ? $"{detail.Title}: swappedPercent is missing."
        : detail.SwappedPercent is < 0 or > 100 ? $"{detail.Title}: swappedPercent must be 0 to 100."
        : detail.Variants.Length > DatesEdit.MostOfEach ? $"{detail.Title}: more than {DatesEdit.Show(DatesEdit.MostOfEach)} variants."
        : detail.Variants.Any(v => v is not { Id.Length: > 0, Title: not null }) ? $"{detail.Title}: a variant has no id or no title."
        : Twice(detail.Variants.Select(v => v.Id)) is { } variant ? $"{detail.Title}: two variants have the id \"{variant}\"."
        : "";

    private static string? Twice(IEnumerable<string> ids) =>
        ids.GroupBy(i => i, StringComparer.Ordinal).FirstOrDefault(g => g.Skip(1).Any())?.Key;

    private static bool IsMarked(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            return document.RootElement is { ValueKind: JsonValueKind.Object } root
                && root.TryGetProperty("ohmstead", out var mark)
                && mark.ValueKind == JsonValueKind.String
                && mark.GetString()!.StartsWith("dating/", StringComparison.Ordinal);
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
