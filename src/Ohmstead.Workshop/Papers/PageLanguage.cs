using System.Collections.Immutable;

namespace Ohmstead.Workshop.Papers;

/// <summary>A second language for the owner's page: what stands there for each English phrase and name.</summary>
/// <param name="Id">What its file is called, without the ending: "deutsch".</param>
/// <param name="Title">What its readers call it: "Deutsch".</param>
/// <param name="Code">As readers of PDF know it: "de".</param>
/// <param name="Words">By the English, large and small letters alike.</param>
public sealed record PageLanguage(string Id, string Title, string Code, ImmutableDictionary<string, string> Words)
{
    /// <summary>The kind of the documents that hold a shop's own words files; the id is that of the language.</summary>
    public const string DocumentKind = "page-language";

    private const string Resource = "owner-page.deutsch.txt";

    /// <summary>The languages that come along, by their ids, each as the text of its file.</summary>
    public static ImmutableSortedDictionary<string, string> Carried { get; } =
        ImmutableSortedDictionary<string, string>.Empty.Add("deutsch", TextOf(Resource));

    /// <summary>Keys with a name within, those that say most first: "worn " and "" of "worn *".</summary>
    internal ImmutableArray<(string Before, string After, string Text)> Patterns { get; } =
    [
        .. Words
            .Where(w => w.Key.Contains(PageLanguageFile.AnyName, StringComparison.Ordinal))
            .Select(w => (Key: w.Key.Split(PageLanguageFile.AnyName), w.Value))
            .OrderByDescending(w => w.Key[0].Length + w.Key[1].Length)
            .ThenBy(w => w.Key[0], StringComparer.Ordinal)
            .Select(w => (w.Key[0], w.Key[1], w.Value)),
    ];

    /// <summary>A language that comes along; null where there is none with this id.</summary>
    public static PageLanguage? OfCarried(string id) =>
        Carried.TryGetValue(id, out var text) ? PageLanguageFile.Read(id, text).Required : null;

    private static string TextOf(string resource)
    {
        using var file = typeof(PageLanguage).Assembly.GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(file);
        return reader.ReadToEnd();
    }
}
