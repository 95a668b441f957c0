using System.Collections.Immutable;
using System.Text.Json;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Merging;

/// <summary>What the benches are called. Each is known by a mark that its copy of the workshop made; a person may give it a name.</summary>
/// <param name="Named">Names by mark.</param>
public sealed record BenchNames(ImmutableDictionary<string, string> Named)
{
    /// <summary>The kind of document that names a bench; its id is the mark.</summary>
    public const string DocumentKind = "bench";

    /// <summary>The kind of document that holds the shop's settings of another bench; its id is the mark.</summary>
    public const string OtherShopKind = "other-shop";

    /// <summary>The longest name that is taken [letters].</summary>
    public const int MostLetters = 40;

    /// <summary>Reads names.</summary>
    /// <param name="documents">Marks with the texts of their documents.</param>
    public static BenchNames Of(IEnumerable<(string Mark, string Text)> documents) =>
        new(documents.ToImmutableDictionary(d => d.Mark, d => Read(d.Text), StringComparer.Ordinal));

    /// <summary>The text of the document that names a bench.</summary>
    public static string Write(string name) => JsonSerializer.Serialize(new OneName(name), FactText.Options);

    /// <summary>What a bench is called.</summary>
    /// <param name="mark">Its mark; empty for what is older than marks.</param>
    public string Of(string mark) =>
        mark.Length == 0 ? "a bench without a name"
        : Named.GetValueOrDefault(mark, "") is { Length: > 0 } name ? name
        : $"Bench {mark[..Math.Min(4, mark.Length)].ToUpperInvariant()}";

    private static string Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<OneName>(text, FactText.Options)?.Name ?? "";
        }
        catch (JsonException)
        {
            return "";
        }
    }

    private sealed record OneName(string Name);
}
