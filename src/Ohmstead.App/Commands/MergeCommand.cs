using System.CommandLine;
using Ohmstead.App.Background;
using Ohmstead.App.Web;
using Ohmstead.Storage;
using Ohmstead.Storage.Merging;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>merge FROM</c>: another copy of the workshop comes into this one, and what contradicts is asked about.</summary>
internal static class MergeCommand
{
    public static Command Make()
    {
        var from = new Argument<string>("FROM")
        {
            Description = "The other bench: its data folder, one backup of it, or a zip written by ohmstead export.",
        };
        var backup = new Option<string?>("--backup")
        {
            Description = "Where the backup goes that is made first. Without this, into a folder beside the data.",
            HelpName = "FOLDER",
        };
        var (data, database) = (DataFolder.Option(), DatabaseOption.Make());
        var verb = new Verb(
            "merge",
            "Make one workshop of two that were worked on apart. Every entry of both is kept. Ctrl-C stops; run it again to go on.",
            concernsMains: false,
            "ohmstead merge tablet.zip",
            "ohmstead merge /media/stick/ohmstead --data my-workshop"
        )
        {
            from,
            backup,
            data,
            database,
        };
        verb.SetAction(
            (parsed, cancel) =>
                RunAsync(DatabaseOption.Place(parsed, data, database), parsed.GetValue(from)!, parsed.GetValue(backup), cancel)
        );
        return verb;
    }

    private static async Task<int> RunAsync(WorkshopPlace place, string from, string? backup, CancellationToken cancel)
    {
        var time = TimeProvider.System;
        if (place.Database is null && Path.GetFullPath(place.Folder) == Path.GetFullPath(from))
            throw new RefusedInput($"{from}: this is the workshop itself. Name the other one.");
        await using var store = await place.OpenFoundAsync(time, Guid.NewGuid(), cancel);
        var outcome = await new WorkshopMerge(store, store.Photos, time).RunAsync(
            from,
            stop => MergeWork.BackUpAsync(store, backup, time.GetUtcNow(), stop),
            new ToError(),
            cancel
        );
        if (outcome.Problems.Count > 0)
            throw new RefusedInput([.. outcome.Problems.Select(p => $"{from}: {p}".ReplaceLineEndings(" "))]);
        var bench = new Bench(store, store.Photos, time, () => Guid.CreateVersion7(time.GetUtcNow()));
        var names = await BenchNaming.ReadAsync(store);
        foreach (var line in MergeWords.Lines(outcome, names))
            Console.WriteLine(line);
        var open = await OpenQuestions.ReadAsync(bench, names);
        foreach (var (one, _) in open.Tags)
            Console.WriteLine($"Question: two units have the tag {one.Card.Tag}. Give one of them another.");
        foreach (var (unit, questions) in open.Units)
        foreach (var question in questions)
            Console.WriteLine($"Question, {unit.Card.Tag}: {question.Question} {string.Join("; ", question.Answers.Select(a => a.Words))}");
        foreach (var (_, title, questions) in open.Types)
        foreach (var question in questions)
            Console.WriteLine(
                $"Question, years of {title}: {question.Question} {string.Join("; ", question.Answers.Select(a => a.Words))}. Until you answer, the first counts."
            );
        if (open.Tags.Length + open.Units.Length + open.Types.Length > 0)
            Console.WriteLine(
                $"Answer on the start page, under Merge two benches.{(open.Tags.Length + open.Units.Length > 0 ? " Until then the later entry counts." : "")}"
            );
        return outcome.IsStopped ? ExitCode.Broken : ExitCode.Done;
    }

    /// <summary>Word every hundred units, apart from the results.</summary>
    private sealed class ToError : IProgress<MergeProgress>
    {
        public void Report(MergeProgress value)
        {
            if (value.Done % 100 == 0)
                Console.Error.WriteLine($"Unit {ValueText.Plain(value.Done)} of {ValueText.Plain(value.All)}");
        }
    }
}
