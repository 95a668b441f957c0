using System.CommandLine;
using System.Globalization;
using Ohmstead.Storage;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>import ZIP</c>: what is new in a zip comes in; all of it is looked at first.</summary>
internal static class ImportCommand
{
    public static Command Make()
    {
        var from = new Argument<string>("ZIP") { Description = "A zip written by ohmstead export." };
        var theirs = new Option<bool>("--take-theirs")
        {
            Description =
                "Where a type sheet or the Shop settings differ, use those of the zip. Yours stay as the version before. Without this, yours are used.",
        };
        var (data, database) = (DataFolder.Option(), DatabaseOption.Make());
        var verb = new Verb(
            "import",
            "Bring in units, type sheets and photos from a zip. What is here already stays as it is.",
            concernsMains: false,
            "ohmstead import workshop.zip",
            "ohmstead import 0412.zip --take-theirs --data my-workshop"
        )
        {
            from,
            theirs,
            data,
            database,
        };
        verb.SetAction(
            (parsed, cancel) =>
                RunAsync(
                    DatabaseOption.Place(parsed, data, database),
                    parsed.GetValue(from)!,
                    parsed.GetValue(theirs) ? DifferingDocuments.TakeTheirs : DifferingDocuments.KeepMine,
                    cancel
                )
        );
        return verb;
    }

    private static async Task<int> RunAsync(WorkshopPlace place, string from, DifferingDocuments differing, CancellationToken cancel)
    {
        if (!File.Exists(from))
            throw new RefusedInput($"{from}: no such file. Give the path of a zip.");
        await using var zip = File.OpenRead(from);
        await using var store = await place.OpenAsync(TimeProvider.System, Guid.NewGuid(), cancel);
        var taken = await ZipIn.TakeAsync(zip, store, store.Photos, TimeProvider.System.GetUtcNow(), new ZipLimits(), differing, cancel);
        if (taken.Problems.Count > 0)
            throw new RefusedInput([.. taken.Problems.Select(p => $"{from}: {p}".ReplaceLineEndings(" "))]);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{from}: {Counted.Of(taken.Units, "unit")} ({Counted.Bare(taken.NewUnits)} new), {Counted.Of(taken.NewEntries, "new entry", "new entries")}, {Counted.Of(taken.NewDocuments, "new sheet or setting", "new sheets and settings")}, {Counted.Of(taken.Photos, "photo")}"
            )
        );
        foreach (var line in taken.Told)
            Console.Error.WriteLine(line);
        return ExitCode.Done;
    }
}
