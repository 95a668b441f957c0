using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.LookOver;

/// <summary>
/// Which symptoms of a sheet an owner's words speak of: a guess by words of the trade, shown as one and never kept as an answer
/// before a person says so.
/// </summary>
internal static class SymptomsInWords
{
    /// <summary>What owners say, and what the symptom is called that they mean: beginnings of words.</summary>
    private static readonly (string[] Said, string[] Title)[] Families =
    [
        (["slow", "sluggish", "crawl", "bog"], ["slow"]),
        (["hum", "growl", "buzz"], ["hum", "growl", "buzz"]),
        (["dark", "lamp", "bulb"], ["lamp", "dark"]),
        (["whistl", "horn"], ["whistl", "horn"]),
        (["hot", "warm", "smell", "smok", "burn", "stink", "stank"], ["hot", "warm", "smell", "smok"]),
        (["cord", "wiggl", "flicker"], ["cord"]),
        (["reverse", "backward", "forward", "direction"], ["direction"]),
        (["step", "notch"], ["step"]),
        (["uncoupl", "magnet"], ["uncoupl", "magnet"]),
    ];

    /// <summary>Words after which the next one does not count.</summary>
    private static readonly string[] Denials = ["no", "not", "never", "without", "doesn't", "didn't", "isn't"];

    /// <summary>Words that narrow a symptom down: both must say the same.</summary>
    private static readonly string[] Sides = ["left", "right", "1", "2", "both"];

    /// <summary>The symptoms with the owner's word that speaks of each, in lower case.</summary>
    public static ImmutableDictionary<string, string> Of(string complaint, IEnumerable<Observation> symptoms)
    {
        var said = Words(complaint);
        var spoken = said.Where((word, n) => n == 0 || !Denials.Contains(said[n - 1])).ToList();
        var found = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var symptom in symptoms)
            if (WordFor(spoken, Words(symptom.Title)) is { } word)
                found[symptom.Id] = word;
        return found.ToImmutable();
    }

    /// <summary>True for a symptom that only an open unit shows.</summary>
    public static bool IsUnderCover(Observation symptom)
    {
        var title = Words(symptom.Title);
        return title.Contains("inside")
            || title.Contains("winding")
            || symptom.Title.Contains("cover off", StringComparison.OrdinalIgnoreCase);
    }

    private static string? WordFor(List<string> said, List<string> title)
    {
        var (ours, theirs) = (Sides.Where(title.Contains).ToList(), Sides.Where(said.Contains).ToList());
        if (ours.Count > 0 && theirs.Count > 0 && !ours.Intersect(theirs).Any())
            return null;
        // "Only one" and "only one way" are said by owners who mean it.
        if (title.Contains("only") && !said.Contains("only") && !said.Contains("one"))
            return null;
        foreach (var (words, titles) in Families)
            if (title.Exists(t => Begins(t, titles)) && said.Find(s => Begins(s, words)) is { } word)
                return word;
        return null;
    }

    private static bool Begins(string word, string[] beginnings) =>
        Array.Exists(beginnings, b => word.StartsWith(b, StringComparison.Ordinal));

    private static List<string> Words(string text) =>
        [
            .. text.ToLowerInvariant()
                .Replace('’', '\'')
                .Split(
                    [' ', ',', '.', ';', ':', '!', '?', '-', '\n', '\r', '\t', '“', '”', '"', '(', ')'],
                    StringSplitOptions.RemoveEmptyEntries
                ),
        ];
}
