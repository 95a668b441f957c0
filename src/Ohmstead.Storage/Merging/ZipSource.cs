using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Merging;

/// <summary>A workshop, or one unit of it, as it went out in a zip.</summary>
internal sealed class ZipSource : MergeSource
{
    private readonly Stream file;
    private readonly ZipReader zip;
    private readonly Dictionary<Guid, UnitEntries> journals;
    private readonly Dictionary<string, ZipPhoto> photos;

    private ZipSource(Stream file, ZipReader zip, ZipContents contents, IReadOnlyList<UnitEntries> journals)
    {
        (this.file, this.zip, Bench) = (file, zip, contents.Bench);
        this.journals = journals.ToDictionary(j => j.UnitId);
        photos = contents.Photos.ToDictionary(p => p.Hash, StringComparer.Ordinal);
        Units = [.. this.journals.Keys.Order()];
        Documents = [.. contents.Documents.Select(d => new Document(d.Kind, d.Id, 1, d.At, d.Text))];
    }

    public override string Bench { get; }

    public override IReadOnlyList<Guid> Units { get; }

    public override IReadOnlyList<Document> Documents { get; }

    public static async Task<MergeSource?> OpenAsync(string from, ZipLimits limits, List<Problem> problems, CancellationToken cancel)
    {
        var file = File.OpenRead(from);
        var zip = ZipReader.Open(file, limits, problems);
        if (zip is not null && problems.Count == 0 && await ZipIn.LookAsync(zip, problems, cancel) is var (contents, journals))
            return new ZipSource(file, zip, contents, journals);
        zip?.Dispose();
        await file.DisposeAsync();
        return null;
    }

    public override Task<IReadOnlyList<NewEntry>> JournalAsync(Guid unitId, CancellationToken cancel) =>
        Task.FromResult(journals[unitId].Entries);

    public override async Task<Stream?> PhotoAsync(string hash, CancellationToken cancel) =>
        photos.TryGetValue(hash, out var photo) && await zip.PhotoAsync(photo, cancel) is { } bytes ? new MemoryStream(bytes) : null;

    public override ValueTask DisposeAsync()
    {
        zip.Dispose();
        return file.DisposeAsync();
    }
}
