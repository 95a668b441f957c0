using System.CommandLine;
using System.Globalization;
using Ohmstead.Storage;
using Ohmstead.Storage.Backups;
using Ohmstead.Storage.Moves;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>restore FOLDER --data NEW</c>: a backup put back, once it was found sound.</summary>
internal static class RestoreCommand
{
    public static Command Make()
    {
        var from = new Argument<string>("FOLDER") { Description = "Where the backups are." };
        var data = new Option<string?>("--data") { Description = "The new data folder. It must be empty.", HelpName = "NEW" };
        var database = new Option<string?>("--database")
        {
            Description = "An empty PostgreSQL database, in place of a data folder.",
            HelpName = "ADDRESS",
        };
        var name = new Option<string?>("--backup")
        {
            Description = "Which backup. Without it, the one that holds most.",
            HelpName = "NAME",
        };
        var instead = new Option<string?>("--instead-of")
        {
            Description = "The workshop that this one replaces. What it holds and the backup does not is said first.",
            HelpName = "FOLDER",
        };
        var without = new Option<bool>("--without-damaged-photos") { Description = "Restore the rest when photos are missing or damaged." };
        var verb = new Verb(
            "restore",
            "Bring back a backup into a new data folder. All of it is checked first.",
            concernsMains: false,
            "ohmstead restore /media/stick/ohmstead --data my-workshop",
            "ohmstead restore /media/stick/ohmstead --data my-workshop --backup 2026-03-04T12-00-00.000Z"
        )
        {
            from,
            data,
            database,
            name,
            instead,
            without,
        };
        verb.SetAction(
            (parsed, cancel) =>
                RunAsync(
                    parsed.GetValue(from)!,
                    parsed.GetValue(name),
                    (parsed.GetValue(data), parsed.GetValue(database)),
                    parsed.GetValue(instead) ?? DataFolder.Usual(),
                    parsed.GetValue(without),
                    cancel
                )
        );
        return verb;
    }

    private static async Task<int> RunAsync(
        string from,
        string? name,
        (string? Folder, string? Database) to,
        string instead,
        bool without,
        CancellationToken cancel
    )
    {
        if (to.Folder is null == to.Database is null)
            throw new RefusedInput("--data: name a new data folder, or an empty database with --database.");
        if (to.Folder is { } data)
        {
            await RestoreAsync(from, name, data, instead, without, cancel);
            Console.WriteLine($"Start on it with: ohmstead --data {data}");
            return ExitCode.Done;
        }
        var passing = Directory.CreateTempSubdirectory("ohmstead-restore-");
        try
        {
            var (place, folder) = (WorkshopPlace.Find(passing.FullName, to.Database, null), Path.Combine(passing.FullName, "data"));
            if (place.Database is null)
                throw new RefusedInput("--database: name an empty database, or name a new data folder with --data. Nothing was restored.");
            await RestoreAsync(from, name, folder, instead, without, cancel);
            await Move.ToDatabaseAsync(folder, place, TimeProvider.System, Guid.NewGuid(), cancel);
            Console.WriteLine($"All of it is in {place} now.");
            Console.WriteLine($"Start on it with: ohmstead --database \"{place.Database}\"");
            return ExitCode.Done;
        }
        finally
        {
            passing.Delete(recursive: true);
        }
    }

    private static async Task RestoreAsync(string from, string? name, string data, string instead, bool without, CancellationToken cancel)
    {
        foreach (var loss in await RestoreLoss.LookAsync(from, name, instead, cancel))
            Console.Error.WriteLine(loss.ToString());
        var restored = await Restore.RunAsync(from, name, data, without, cancel);
        if (restored.Problems.Count > 0)
            throw new RefusedInput([.. restored.Problems.Select(p => p.ToString())]);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Backup {restored.Backup}: {Counted.Of(restored.Units, "unit")}, {Counted.Of(restored.Entries, "entry", "entries")}, {Counted.Of(restored.Photos, "photo")}."
            )
        );
        foreach (var hash in restored.MissingPhotos)
            Console.Error.WriteLine($"Photo {hash} could not be brought back.");
    }
}
