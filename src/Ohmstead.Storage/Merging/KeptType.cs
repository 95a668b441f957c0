using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage.Merging;

/// <summary>
/// The version of its type that a unit keeps is named by a number, and every bench has its own numbers: after a merge the number may mean
/// another text.
/// </summary>
internal static class KeptType
{
    /// <summary>True where the other bench's word counts now, and its text is another one here.</summary>
    /// <param name="before">The unit as it was here; null for a new one.</param>
    public static async Task<bool> IsAnotherAsync(
        BenchUnit? before,
        BenchUnit merged,
        MergeSource source,
        IStore store,
        CancellationToken cancel
    )
    {
        if (
            merged.All<SheetKept>().LastOrDefault(k => k.Fact.SheetId == merged.Card.SheetId)
                is not { Entry: { } entry, Fact: { Version: > 0 } kept }
            || before?.Journal.Any(e => e.Id == entry.Id) == true
        )
            return false;
        var theirs = Text(source.Documents, kept);
        return theirs is not null && theirs != Text(await store.VersionsAsync(SheetShelf.Kind, cancel), kept);
    }

    // As a unit is read: the newest where that version is not there. A zip holds the newest only.
    private static string? Text(IReadOnlyList<Document> documents, SheetKept kept)
    {
        var versions = documents.Where(d => d.Kind == SheetShelf.Kind && d.Id == kept.SheetId).OrderBy(d => d.Version).ToList();
        return (versions.Find(d => d.Version == kept.Version) ?? versions.LastOrDefault())?.Text;
    }
}
