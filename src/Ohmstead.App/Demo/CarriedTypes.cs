using System.Collections.Concurrent;
using System.Reflection;
using Ohmstead.App.Web;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Demo;

/// <summary>The type sheets that are carried inside the program.</summary>
internal static class CarriedTypes
{
    private static readonly ConcurrentDictionary<string, TypeSheet> Read = new(StringComparer.Ordinal);

    /// <summary>The type.</summary>
    public static TypeSheet Of(string id) => Read.GetOrAdd(id, i => TypeSheetFile.Read(TextOf(i)).Required);

    /// <summary>Its text.</summary>
    public static string TextOf(string id)
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream($"{id}.sheet.json")
            ?? throw new InvalidOperationException($"The program lacks the type {id}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>What it is called, without the mark that stands beside it anyway.</summary>
    public static string TitleOf(string id) => Of(id).Title.Replace(" (invented)", "", StringComparison.Ordinal);

    /// <summary>Puts it among the workshop's types, where it is not yet.</summary>
    public static async Task KeepAsync(Bench bench, string id)
    {
        if (await bench.Store.ReadDocumentAsync(Bench.SheetKind, id, CancellationToken.None) is null)
            await bench.SaveDocumentAsync(Bench.SheetKind, id, 0, TextOf(id));
    }
}
