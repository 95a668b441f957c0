using System.CommandLine;
using System.Globalization;
using Ohmstead.Storage;
using Ohmstead.Storage.Backups;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>backup FOLDER</c>: one more backup, also while the tool runs.</summary>
internal static class BackupCommand
{
    private const int UsuallyKept = 10;

    public static Command Make()
    {
        var to = new Argument<string>("FOLDER") { Description = "Where the backups go, best on another disk." };
        var keep = new Option<int>("--keep")
        {
            Description = "How many backups to keep. The last three that were checked always stay.",
            HelpName = "NUMBER",
            DefaultValueFactory = _ => UsuallyKept,
        };
        var (data, database) = (DataFolder.Option(), DatabaseOption.Make());
        var verb = new Verb(
            "backup",
            "Back up the workshop. Each photo is copied once for all backups. Ohmstead may be running.",
            concernsMains: false,
            "ohmstead backup /media/stick/ohmstead",
            "ohmstead backup /media/stick/ohmstead --data my-workshop --keep 30"
        )
        {
            to,
            data,
            database,
            keep,
        };
        verb.SetAction(
            (parsed, cancel) => RunAsync(DatabaseOption.Place(parsed, data, database), parsed.GetValue(to)!, parsed.GetValue(keep), cancel)
        );
        return verb;
    }

    private static async Task<int> RunAsync(WorkshopPlace place, string to, int keep, CancellationToken cancel)
    {
        if (keep < 1)
            throw new RefusedInput("--keep: must be 1 or more");
        var made = await Backup.MakeAsync(place, to, TimeProvider.System.GetUtcNow(), keep, Guid.NewGuid(), cancel);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{made.Folder}: {Counted.Of(made.Units, "unit")}, {Counted.Of(made.Entries, "entry", "entries")}, {Counted.Of(made.Photos, "photo")} ({Counted.Bare(made.NewPhotos)} new), database {made.DatabaseBytes / 1e6:0.#} MB. Checked: sound."
            )
        );
        if (made.ReplacedPhotos > 0)
            Console.Error.WriteLine(
                $"{Counted.Of(made.ReplacedPhotos, "photo")} had gone bad in {to} and {(made.ReplacedPhotos == 1 ? "was" : "were")} replaced. That disk may be failing."
            );
        if (made.FewerEntries > 0)
            Console.Error.WriteLine(
                $"An earlier backup in {to} holds {Counted.Of(made.FewerEntries, "entry", "entries")} more than this one. Restore takes that one unless you name another. If this is another workshop, give it a backup folder of its own."
            );
        foreach (var hash in made.MissingPhotos)
            Console.Error.WriteLine($"Photo {hash} is missing or damaged in {place}. It is not in the backup.");
        return ExitCode.Done;
    }
}
