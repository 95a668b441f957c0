using System.CommandLine;
using System.Globalization;
using Ohmstead.Storage;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>export ZIP</c>: the workshop, or one unit, as plain JSON and images.</summary>
internal static class ExportCommand
{
    public static Command Make()
    {
        var to = new Argument<string>("ZIP") { Description = "The zip to write. It must not be there yet." };
        var unit = new Option<string?>("--unit") { Description = "Only this unit, by its tag.", HelpName = "TAG" };
        var (data, database) = (DataFolder.Option(), DatabaseOption.Make());
        var verb = new Verb(
            "export",
            "Write the workshop, or one unit, as a zip of plain JSON and photos. Photos go out without place and camera.",
            concernsMains: false,
            "ohmstead export workshop.zip",
            "ohmstead export 0412.zip --unit 0412 --data my-workshop"
        )
        {
            to,
            unit,
            data,
            database,
        };
        verb.SetAction(
            (parsed, cancel) => RunAsync(DatabaseOption.Place(parsed, data, database), parsed.GetValue(to)!, parsed.GetValue(unit), cancel)
        );
        return verb;
    }

    private static async Task<int> RunAsync(WorkshopPlace place, string to, string? unit, CancellationToken cancel)
    {
        if (File.Exists(to) || Directory.Exists(to))
            throw new RefusedInput($"{to} is there already. Name a new file.");
        await using var store = await place.OpenFoundAsync(TimeProvider.System, Guid.NewGuid(), cancel);
        var id = unit is null ? (Guid?)null : await FindAsync(store, unit, cancel);
        // A name of its own: nothing that lies beside it is written over.
        var part = $"{to}.{Guid.NewGuid():N}.part";
        try
        {
            var written = await WriteAsync(store, id, part, cancel);
            File.Move(part, to);
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{to}: {Counted.Of(written.Units, "unit")}, {Counted.Of(written.Entries, "entry", "entries")}, {Counted.Of(written.Documents, "sheet or setting", "sheets and settings")}, {Counted.Of(written.Photos, "photo")}"
                )
            );
            foreach (var hash in written.MissingPhotos)
                Console.Error.WriteLine($"Photo missing: {hash}. The zip says so too.");
            return ExitCode.Done;
        }
        finally
        {
            File.Delete(part);
        }
    }

    private static async Task<ZipWritten> WriteAsync(Store store, Guid? id, string part, CancellationToken cancel)
    {
        await using var zip = File.Create(part);
        var at = TimeProvider.System.GetUtcNow();
        return id is { } one
            ? (await ZipOut.WriteUnitAsync(zip, one, store, store.Photos, at, cancel))!
            : await ZipOut.WriteAllAsync(zip, store, store.Photos, at, cancel);
    }

    private static async Task<Guid> FindAsync(Store store, string unit, CancellationToken cancel)
    {
        var found = (await store.CardsAsync(withHandedBack: true, cancel))
            .Where(c => c.Tag == unit || (Guid.TryParse(unit, out var id) && c.Id == id))
            .Select(c => c.Id)
            .ToList();
        return found switch
        {
            [var one] => one,
            [] => throw new RefusedInput($"--unit: no unit has the tag {unit}"),
            _ => throw new RefusedInput(
                $"--unit: several units have the tag {unit}. Give one of these instead: {string.Join(", ", found)}"
            ),
        };
    }
}
