using Ohmstead.App.Web;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Papers;

namespace Ohmstead.App.Papers;

/// <summary>Words files of the owner's page: those that come along, and those that the shop brought in.</summary>
internal static class PageLanguages
{
    /// <summary>Ending of a words file.</summary>
    public const string Ending = ".txt";

    /// <summary>A language by its id; null for none, or where its file cannot be read.</summary>
    public static async Task<PageLanguage?> OfAsync(Bench bench, string id) =>
        id.Length > 0 && await TextAsync(bench, id) is { } text ? PageLanguageFile.Read(id, text).Value : null;

    /// <summary>The text of a words file, the shop's own before the one that comes along; null where there is none.</summary>
    public static async Task<string?> TextAsync(Bench bench, string id) =>
        await bench.Store.ReadDocumentAsync(PageLanguage.DocumentKind, id, CancellationToken.None) is { } own
            ? own.Text
            : PageLanguage.Carried.GetValueOrDefault(id);

    /// <summary>Every language that can be chosen, by id.</summary>
    public static async Task<IReadOnlyList<PageLanguage>> AllAsync(Bench bench)
    {
        var ids = (await bench.Store.DocumentsAsync(PageLanguage.DocumentKind, CancellationToken.None)).Select(d => d.Id);
        var all = new List<PageLanguage>();
        foreach (var id in ids.Concat(PageLanguage.Carried.Keys).Distinct().Order(StringComparer.Ordinal))
            if (await OfAsync(bench, id) is { } language)
                all.Add(language);
        return all;
    }

    /// <summary>Keeps a words file under its name, in the place of one that has it already.</summary>
    /// <param name="file">Name of the file: "deutsch.txt".</param>
    /// <returns>Its id, or every line that is wrong.</returns>
    public static async Task<(string Id, IReadOnlyList<Problem> Problems)> KeepAsync(Bench bench, string file, string text)
    {
        var id = string.Concat(
            Path.GetFileNameWithoutExtension(file).ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')
        );
        var read = PageLanguageFile.Read(id, text);
        if (!read.IsSound)
            return ("", read.Problems);
        var version = 0;
        while (true)
        {
            var kept = await bench.SaveDocumentAsync(PageLanguage.DocumentKind, id, version, text);
            if (kept.IsSaved)
                return (id, []);
            version = kept.Newest.Version;
        }
    }
}
