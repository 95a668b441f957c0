using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Merging;

/// <summary>The other workshop of a merge, which is only read.</summary>
internal abstract class MergeSource : IAsyncDisposable
{
    /// <summary>The mark of its bench; empty where it does not say.</summary>
    public abstract string Bench { get; }

    /// <summary>Its units.</summary>
    public abstract IReadOnlyList<Guid> Units { get; }

    /// <summary>Every version of its documents that it has.</summary>
    public abstract IReadOnlyList<Document> Documents { get; }

    /// <summary>The whole journal of a unit.</summary>
    public abstract Task<IReadOnlyList<NewEntry>> JournalAsync(Guid unitId, CancellationToken cancel);

    /// <summary>The bytes of a photo or recording; null where it is not there.</summary>
    public abstract Task<Stream?> PhotoAsync(string hash, CancellationToken cancel);

    /// <summary>Opens a data folder, one backup, or a zip; all of a zip is looked at first.</summary>
    /// <returns>Null, with every problem reported, where it cannot be merged.</returns>
    public static async Task<MergeSource?> OpenAsync(
        string from,
        TimeProvider time,
        ZipLimits limits,
        List<Problem> problems,
        CancellationToken cancel
    )
    {
        if (Directory.Exists(from))
            return await FolderSource.OpenAsync(from, time, problems, cancel);
        if (File.Exists(from))
            return await ZipSource.OpenAsync(from, limits, problems, cancel);
        problems.Add(new Problem(from, "is not there", "name a data folder, a backup or a zip"));
        return null;
    }

    public abstract ValueTask DisposeAsync();
}
