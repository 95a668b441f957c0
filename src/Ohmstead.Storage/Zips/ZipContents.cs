using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Zips;

/// <summary>The table of contents of a zip, held against what is really in it.</summary>
internal sealed record ZipContents(IReadOnlyList<string> Units, IReadOnlyList<ZipDocument> Documents, IReadOnlyList<ZipPhoto> Photos)
{
    /// <summary>The mark of the bench that it is of; empty where it does not say.</summary>
    public string Bench { get; init; } = "";

    public static async Task<ZipContents> ReadAsync(ZipReader zip, List<Problem> problems, CancellationToken cancel)
    {
        var nothing = new ZipContents([], [], []);
        if (!zip.Has(ZipNames.Contents))
        {
            problems.Add(new Problem(ZipNames.Contents, "is missing", "a zip written by ohmstead export is expected"));
            return nothing;
        }
        var own = new List<Problem>();
        var text = await zip.TextAsync(ZipNames.Contents, cancel);
        var contents = JsonCursor.TryOpen(text, own, out var root) ? await ReadAsync(root, zip, cancel) : nothing;
        problems.AddRange(own.Select(p => p with { Path = $"{ZipNames.Contents}: {p.Path}" }));
        foreach (var document in contents.Documents)
            problems.AddRange(DocumentFile.Check(document.Kind, document.Text).Select(p => p with { Path = $"{document.File}: {p.Path}" }));
        return contents;
    }

    private static async Task<ZipContents> ReadAsync(JsonCursor root, ZipReader zip, CancellationToken cancel)
    {
        if (root.Word("ohmstead") is var mark && mark.Length > 0 && mark != ZipNames.Mark)
            root.Report("ohmstead", $"is \"{mark}\"", $"\"{ZipNames.Mark}\" is expected");
        var units = Names(root, "units", zip);
        var bared = root.Has("bared") ? root.At("bared") : (JsonCursor?)null;
        var photos = Names(root, "photos", zip)
            .ConvertAll(name =>
            {
                var hash = Path.GetFileNameWithoutExtension(name);
                return new ZipPhoto(name, hash, bared is { } b && b.Has(name) ? b.Word(name) : hash);
            });
        var documents = new List<ZipDocument>();
        foreach (var at in root.List("documents", int.MaxValue))
        {
            if (!at.IsObject())
                continue;
            var (kind, id, file) = (at.Word("kind"), at.Word("id"), at.Word("file"));
            if (!zip.Has(file))
                at.Report("file", $"\"{file}\" is not in the zip", "every document listed must be there");
            else
                documents.Add(new ZipDocument(kind, id, file, await zip.TextAsync(file, cancel), At(at)));
        }
        Unlisted(root, zip, "documents", documents.Select(d => d.File));
        return new ZipContents(units, documents, photos) { Bench = root.Word("bench", "") };
    }

    /// <summary>When a document was saved; the earliest time of all where the zip does not say.</summary>
    private static DateTimeOffset At(JsonCursor document) =>
        DateTimeOffset.TryParse(document.Word("at", ""), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at)
            ? at
            : DateTimeOffset.UnixEpoch;

    private static List<string> Names(JsonCursor root, string folder, ZipReader zip)
    {
        var names = new List<string>();
        foreach (var at in root.List(folder, int.MaxValue))
        {
            var name = at.AsWord();
            if (name.StartsWith(folder + "/", StringComparison.Ordinal) && zip.Has(name))
                names.Add(name);
            else if (name.Length > 0)
                at.Report($"\"{name}\" is not in the zip", "every file listed must be there");
        }
        Unlisted(root, zip, folder, names);
        return [.. names.Distinct()];
    }

    private static void Unlisted(JsonCursor root, ZipReader zip, string folder, IEnumerable<string> listed)
    {
        foreach (var name in zip.Below(folder).Except(listed).Take(20))
            root.Report(folder, $"does not list {name}", "every file of the zip must be listed");
    }
}

/// <summary>A photo of a zip.</summary>
/// <param name="Hash">What entries know it by.</param>
/// <param name="FileHash">SHA-256 of its bytes there: another one where headers were taken out of a photo of before.</param>
internal sealed record ZipPhoto(string Name, string Hash, string FileHash);

/// <summary>A document of a zip.</summary>
internal sealed record ZipDocument(string Kind, string Id, string File, string Text, DateTimeOffset At);
