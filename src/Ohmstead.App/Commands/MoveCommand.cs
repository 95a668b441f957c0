using System.CommandLine;
using System.Globalization;
using Ohmstead.Storage;
using Ohmstead.Storage.Moves;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>move database</c>, <c>move folder</c>: the workshop from a folder into the club's database, and back.</summary>
internal static class MoveCommand
{
    private const string ToDatabase = "database",
        ToFolder = "folder";

    public static Command Make()
    {
        var where = new Argument<string>("WHERE") { Description = $"{ToDatabase} or {ToFolder}: where the workshop goes." };
        where.AcceptOnlyFromAmong(ToDatabase, ToFolder);
        var (data, database) = (DataFolder.Option(), DatabaseOption.Make());
        var verb = new Verb(
            "move",
            "Move the workshop from a folder into the database that your club shares, or back. What it came from stays as it is.",
            concernsMains: false,
            "ohmstead move database --database \"Host=clubhouse;Database=trains;Username=anna\"",
            "ohmstead move folder --data at-home --database \"Host=clubhouse;Database=trains;Username=anna\""
        )
        {
            where,
            data,
            database,
        };
        verb.SetAction((parsed, cancel) => RunAsync(parsed.GetValue(where)!, DatabaseOption.Place(parsed, data, database), cancel));
        return verb;
    }

    private static async Task<int> RunAsync(string where, WorkshopPlace place, CancellationToken cancel)
    {
        if (place.Database is null)
            throw new RefusedInput("--database: name the database, like \"Host=HOST;Database=NAME;Username=YOU\"");
        if (where == ToDatabase)
            place.CheckCanBeRemembered();
        var (time, program) = (TimeProvider.System, Guid.NewGuid());
        var moved =
            where == ToDatabase
                ? await Move.ToDatabaseAsync(place.Folder, place, time, program, cancel)
                : await Move.ToFolderAsync(place, place.Folder, time, program, cancel);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Moved to {(where == ToDatabase ? place.ToString() : place.Folder)}: {Counted.Of(moved.Units, "unit")}, {Counted.Of(moved.Entries, "entry", "entries")}, {Counted.Of(moved.Documents, "sheet or setting", "sheets and settings")}, {Counted.Of(moved.Photos, "photo")}. Compared one by one: the same."
            )
        );
        if (where == ToDatabase)
        {
            place.Remember();
            Console.WriteLine(
                $"From now on Ohmstead opens the database. What was in {place.Folder} is still there. Do not work in it any more."
            );
        }
        else
            Console.WriteLine($"Start on it with: ohmstead --data {place.Folder} --database {WorkshopPlace.None}");
        foreach (var hash in moved.MissingPhotos)
            Console.Error.WriteLine($"Photo missing: {hash}. It was missing before.");
        return ExitCode.Done;
    }
}
