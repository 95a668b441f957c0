using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using Ohmstead.App.Background;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Benchmarks;
using Ohmstead.Perf.Experiments;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Perf.Stores;

/// <summary>
/// The way of one reading through the real store and what works behind the screens: what an entry costs, and how long it takes until
/// the findings know it, with <see cref="Before"/> readings taken already.
/// </summary>
internal static class EntryFigures
{
    private const int Before = 20;
    private const int Entries = 60;
    private const int Units = 2;
    private const int Measured = 3;
    private const int Compared = 24;
    private const double NearlyAsLikely = 0.8;
    private const int FirstCompared = 500;

    public static async Task<int> RunAsync()
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
        try
        {
            await using var store = await Store.OpenAsync(folder, TimeProvider.System, CancellationToken.None);
            var bench = new Bench(store, store.Photos, TimeProvider.System, Guid.CreateVersion7);
            var table = new StringBuilder("| sheet | what | median | slowest | allocated, median |\n|---|---|---|---|---|\n");
            var allowed = new List<string>();
            foreach (
                var (path, mostSeconds) in new[]
                {
                    (RepositoryRoot.SamplePath, 0.5),
                    (Path.Combine(RepositoryRoot.Path, "demo/step-230.sheet.json"), 1.5),
                }
            )
            {
                var text = await File.ReadAllTextAsync(path);
                var sheet = TypeSheetFile.Read(text).Required;
                await bench.SaveDocumentAsync(Bench.SheetKind, sheet.Id, 0, text);
                await EntryAsync(bench, sheet, table);
                await FindingsAsync(bench, sheet, mostSeconds, table, allowed);
            }
            table.AppendLine(
                CultureInfo.InvariantCulture,
                $"\n{Before} readings taken before. An entry: one reading, on the disk, then looked at by three (the screen, another window, what works behind them), {Entries} times. Findings: {Units} drawn units, {Measured} entries each, in one process, the wait of 0.15 s for a next entry in it. {string.Join(" ", allowed)}"
            );
            return new Figures("entry", table.ToString(), []).Report();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task EntryAsync(Bench bench, TypeSheet sheet, StringBuilder table)
    {
        var drawn = DrawnUnit.Draw(new UnitModel(sheet), 1).Readings.Readings;
        var id = await BeginAsync(bench, sheet, drawn);
        var (times, bytes) = (new double[Entries], new double[Entries]);
        for (var n = -5; n < Entries; n++)
        {
            var fact = Fact(drawn[(n + Before + 5) % drawn.Length]);
            var (start, before) = (Stopwatch.GetTimestamp(), GC.GetTotalAllocatedBytes(precise: true));
            await bench.EnterAsync(id, 0, "bench", fact);
            for (var look = 0; look < 3; look++)
                await LookAsync(bench, id);
            if (n < 0)
                continue;
            times[n] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            bytes[n] = GC.GetTotalAllocatedBytes(precise: true) - before;
        }
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"| {sheet.Id} | an entry | {Clock.Median(times):F1} ms | {times.Max():F1} ms | {Clock.Median(bytes) / 1e3:F0} kB |"
        );
    }

    private static async Task LookAsync(Bench bench, Guid id)
    {
        var unit = (await bench.ReadAsync(id))!;
        var (sheet, shop) = ((await bench.SheetOfAsync(unit))!, await bench.ShopAsync());
        var model = new UnitModel(OwnSheet.OnBench(unit, sheet, shop).Required);
        if (BenchReadings.Of(unit, model, shop).Required.Readings.Length < Before)
            throw new InvalidOperationException("a reading was lost on the way");
    }

    private static async Task FindingsAsync(Bench bench, TypeSheet sheet, double mostSeconds, StringBuilder table, List<string> allowed)
    {
        await using var diagnoses = new UnitDiagnoses(bench, NullLogger<UnitDiagnoses>.Instance);
        var (first, times, bytes) = (new List<double>(), new List<double>(), new List<double>());
        for (var seed = 1; seed <= Units; seed++)
        {
            var drawn = DrawnUnit.Draw(new UnitModel(sheet), seed).Readings.Readings;
            var id = await BeginAsync(bench, sheet, drawn);
            await KnownAsync(bench, diagnoses, id);
            for (var n = Before; n < Math.Min(Before + Measured, drawn.Length); n++)
            {
                var (start, before) = (Stopwatch.GetTimestamp(), GC.GetTotalAllocatedBytes(precise: true));
                await bench.EnterAsync(id, 0, "bench", Fact(drawn[n]));
                first.Add(Stopwatch.GetElapsedTime(start, await KnownAsync(bench, diagnoses, id)).TotalSeconds);
                times.Add(Stopwatch.GetElapsedTime(start).TotalSeconds);
                bytes.Add(GC.GetTotalAllocatedBytes(precise: true) - before);
            }
        }
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"| {sheet.Id} | what is likely so far | {Clock.Median(first):F2} s | {first.Max():F2} s | |"
        );
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"| {sheet.Id} | its findings | {Clock.Median(times):F2} s | {times.Max():F2} s | {Clock.Median(bytes) / 1e6:F1} MB |"
        );
        allowed.Add(Agreement(sheet));
        allowed.Add(string.Create(CultureInfo.InvariantCulture, $"Wanted on {sheet.Id}: {mostSeconds} s (median)."));
    }

    /// <summary>A unit with the first of its drawn readings.</summary>
    public static async Task<Guid> BeginAsync(Bench bench, TypeSheet sheet, IReadOnlyList<TakenReading> drawn, int readings = Before)
    {
        var id = bench.NewId();
        await bench.EnterAsync(id, 0, "bench", new TakenIn("P-1", sheet.Id, "", ""));
        await bench.EnterAsync(id, 1, "bench", [.. drawn.Take(readings).Select(Fact)]);
        return id;
    }

    /// <summary>How often what is likely first, so far, is what is likely first in the end, or in the end nearly as likely.</summary>
    private static string Agreement(TypeSheet sheet)
    {
        var (model, same, sameAtLast) = (new UnitModel(sheet), 0, 0);
        var library = new ReadingLibrary(model);
        for (var seed = 1; seed <= Compared; seed++)
        {
            var drawn = DrawnUnit.Draw(model, FirstCompared + seed).Readings;
            var early = new List<EarlyAnswer>();
            var options = new DiagnosisOptions { Early = early.Add, RankNext = false };
            var result = Diagnoser.Run(library, drawn with { Readings = [.. drawn.Readings.Take(Before + 1)] }, options);
            var likeliest = result.Faults.FirstOrDefault(f => IsNamed(f.Probability, [f.Mode]));
            bool IsSame(EarlyAnswer a) =>
                (a.Findings.FirstOrDefault(f => IsNamed(f.Probability, f.Modes)), likeliest) switch
                {
                    (null, null) => true,
                    ({ } early, { } last) => early.Modes.Any(m =>
                        result.Faults.First(f => f.Mode == m).Probability >= NearlyAsLikely * last.Probability
                        || result.Alike.Any(g => g.Contains(m) && g.Contains(last.Mode))
                    ),
                    _ => false,
                };
            same += early.Count == 0 || IsSame(early[0]) ? 1 : 0;
            sameAtLast += early.Count == 0 || IsSame(early[^1]) ? 1 : 0;
        }
        return FormattableString.Invariant(
            $"Likeliest so far and in the end on {sheet.Id}: the same, or one that the readings do not tell from it, or in the end at least {NearlyAsLikely} times as likely, in {same} of {Compared} drawn units when it is said first, in {sameAtLast} when it is said last."
        );
    }

    /// <summary>As the screens name a fault: likelier than 5 %, and than on any unserviced unit.</summary>
    private static bool IsNamed(double probability, ImmutableArray<FaultMode> modes) =>
        probability >= 0.05 && probability > 1.3 * modes.Sum(m => m.Percent) / 100;

    /// <summary>Waits until the findings know the last entry.</summary>
    /// <returns>When something likely was first said about it.</returns>
    public static async Task<long> KnownAsync(Bench bench, UnitDiagnoses diagnoses, Guid id)
    {
        var said = 0L;
        var last = (await bench.ReadAsync(id))!.LastNumber;
        var known = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        void Look(Guid of)
        {
            if (of != id)
                return;
            var state = diagnoses.Of(id);
            if (state.SoFar is not null)
                Interlocked.CompareExchange(ref said, Stopwatch.GetTimestamp(), 0);
            if (state.Latest is { } latest && latest.Number == last)
                known.TrySetResult();
        }
        diagnoses.Changed += Look;
        Look(id);
        await known.Task.WaitAsync(TimeSpan.FromMinutes(5));
        diagnoses.Changed -= Look;
        return said == 0 ? Stopwatch.GetTimestamp() : said;
    }

    /// <summary>A drawn reading as it is entered.</summary>
    public static Fact Fact(TakenReading taken) =>
        new ReadingEntered(
            taken.Spec.Id,
            taken.Outcome switch
            {
                Outcome.Value => Shown.Number(taken.Value),
                Outcome.OverRange => Shown.OverRange,
                Outcome.Jumps => Shown.Jumps([.. taken.JumpValues.Select(v => double.IsFinite(v) ? v : (double?)null)]),
                _ => Shown.NotTaken("not on this bench"),
            },
            BenchState.AsSheet with
            {
                SupplyVolts = taken.State.Source is { Volts: > 60 } line ? line.Volts : null,
            }
        );
}
