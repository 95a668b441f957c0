using System.Text.Json;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Rows;

/// <summary>One line of a journal, its fact as JSON.</summary>
internal sealed class EntryRow
{
    public Guid UnitId { get; set; }
    public int Number { get; set; }
    public Guid Id { get; set; }
    public DateTimeOffset At { get; set; }
    public string By { get; set; } = "";

    /// <summary>The fact's kind, for queries by kind.</summary>
    public string Kind { get; set; } = "";
    public string Json { get; set; } = "";
    public string Search { get; set; } = "";

    /// <summary>The copy of the workshop that it was made at; empty where that was not kept yet.</summary>
    public string Bench { get; set; } = "";

    /// <summary>Ids of the entries that it was made after, with blanks between; null where that is the one before it.</summary>
    public string? After { get; set; }

    public Entry Entry =>
        new(Id, UnitId, Number, At, By, FactText.Read(Json))
        {
            Bench = Bench,
            After = After is null ? null : [.. After.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Guid.Parse)],
        };

    public static EntryRow Of(Entry entry)
    {
        var json = FactText.Write(entry.Fact);
        return new EntryRow
        {
            UnitId = entry.UnitId,
            Number = entry.Number,
            Id = entry.Id,
            At = entry.At,
            By = entry.By,
            Kind = KindOf(json),
            Json = json,
            Search = SearchText.Of(entry.Fact),
            Bench = entry.Bench,
            After = AfterText(entry),
        };
    }

    /// <summary>What an entry was made after, as the column has it.</summary>
    public static string? AfterText(Entry entry) => entry.After is { } after ? string.Join(' ', after) : null;

    private static string KindOf(string json)
    {
        try
        {
            using var fact = JsonDocument.Parse(json);
            return
                fact.RootElement.ValueKind == JsonValueKind.Object
                && fact.RootElement.TryGetProperty("kind", out var kind)
                && kind.ValueKind == JsonValueKind.String
                ? kind.GetString()!
                : "";
        }
        catch (JsonException)
        {
            return "";
        }
    }
}
