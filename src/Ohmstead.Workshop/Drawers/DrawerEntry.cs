using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Drawers;

/// <summary>
/// One press at the drawer, kept as a document of its own that is never written again: nothing entered is lost, and two windows
/// cannot undo each other.
/// </summary>
/// <param name="Facts">What it says, all or nothing.</param>
public sealed record DrawerEntry(Guid Id, DateTimeOffset At, string By, ImmutableArray<DrawerFact> Facts)
{
    /// <summary>The mark of the device that it was entered at; null for the machine that the tool runs on, and in older versions.</summary>
    public string? Bench { get; init; }

    /// <summary>The kind of the documents.</summary>
    public const string DocumentKind = "drawer";

    /// <summary>The document's id.</summary>
    public string DocumentId => Id.ToString("D");

    /// <summary>As it is kept.</summary>
    public string Write() => JsonSerializer.Serialize(new Kept(At.ToUniversalTime(), By, Facts, Bench), FactText.Options);

    /// <summary>Reads it; null for one of a later version, which stays where it is.</summary>
    public static DrawerEntry? Read(string documentId, string text)
    {
        try
        {
            return
                Guid.TryParseExact(documentId, "D", out var id)
                && JsonSerializer.Deserialize<Kept>(text, FactText.Options) is { Facts.IsDefault: false } kept
                ? new DrawerEntry(id, kept.At, kept.By, kept.Facts) { Bench = kept.Bench }
                : null;
        }
        catch (Exception e) when (e is JsonException or NotSupportedException)
        {
            return null;
        }
    }

    /// <summary>The photos it speaks of.</summary>
    public IEnumerable<string> Photos => Facts.OfType<BinSaid>().Select(b => b.Photo ?? "").Where(PhotoHash.IsOne);

    private sealed record Kept(
        DateTimeOffset At,
        string By,
        ImmutableArray<DrawerFact> Facts,
        [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Bench = null
    );
}
