using System.CommandLine;
using System.Globalization;
using Ohmstead.Storage.Backups;

namespace Ohmstead.App.Commands;

/// <summary><c>backup FOLDER</c>: one more backup, also while the tool runs.</summary>
internal static class BackupCommand
{
    private const int UsuallyKept = 10;

    public static Command Make()
    {
        var to = new Argument<string>("FOLDER") { Description = "Where the backups are; best on another disk." };
        var keep = new Option<int>("--keep")
        {
            Description = "How many backups are kept.",
            HelpName = "NUMBER",
            DefaultValueFactory = _ => UsuallyKept,
        };
        var data = DataFolder.Option();
        var verb = new Verb(
            "backup",
            "Copy the workshop; photos that an earlier backup has are not copied again. The tool may be running.",
            "ohmstead backup /media/stick/ohmstead",
            "ohmstead backup /media/stick/ohmstead --data my-workshop --keep 30"
        )
        {
            to,
            data,
            keep,
        };
        verb.SetAction(
            (parsed, cancel) =>
                RunAsync(
                    parsed.GetValue(data) ?? DataFolder.Usual(),
                    parsed.GetValue(to)!,
                    parsed.GetValue(keep),
                    cancel
                )
        );
        return verb;
    }

    private static async Task<int> RunAsync(string data, string to, int keep, CancellationToken cancel)
    {
        if (keep < 1)
            throw new RefusedInput("--keep: at least one backup is kept");
        var made = await Backup.MakeAsync(data, to, TimeProvider.System.GetUtcNow(), keep, cancel);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{made.Folder}: {Shown.Count(made.Units, "unit")}, {Shown.Count(made.Entries, "entry", "entries")}, {Shown.Count(made.Photos, "photo")} ({made.NewPhotos} new), database {made.DatabaseBytes / 1e6:0.#} MB"
            )
        );
        foreach (var hash in made.MissingPhotos)
            Console.Error.WriteLine($"photo {hash} is missing from {data}, or damaged there: it is not in the backup");
        return ExitCode.Done;
    }
}
