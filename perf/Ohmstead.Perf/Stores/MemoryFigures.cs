using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using Ohmstead.App.Background;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Benchmarks;
using Ohmstead.Perf.Experiments;
using Ohmstead.Storage;

namespace Ohmstead.Perf.Stores;

/// <summary>What the findings of one unit after another leave in memory: alive after a collection, and taken from the machine.</summary>
internal static class MemoryFigures
{
    private const int UsualUnits = 16;
    private const int Readings = 30;
    private const double MostMegabytes = 400;

    /// <param name="arguments">How many units; sixteen where it is left out.</param>
    public static async Task<int> RunAsync(string[] arguments)
    {
        var units = arguments is [var said, ..] ? int.Parse(said, CultureInfo.InvariantCulture) : UsualUnits;
        var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
        try
        {
            await using var store = await Store.OpenAsync(folder, TimeProvider.System, CancellationToken.None);
            var bench = new Bench(store, store.Photos, TimeProvider.System, Guid.CreateVersion7);
            var sheet = RepositoryRoot.Sample;
            await bench.SaveDocumentAsync(Bench.SheetKind, sheet.Id, 0, await File.ReadAllTextAsync(RepositoryRoot.SamplePath));
            return await MeasureAsync(bench, sheet, units);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<int> MeasureAsync(Bench bench, TypeSheet sheet, int units)
    {
        await using var diagnoses = new UnitDiagnoses(bench, NullLogger<UnitDiagnoses>.Instance);
        using var self = Process.GetCurrentProcess();
        var table = new StringBuilder(
            "| units worked out | alive | grown by the last | taken from the machine, the most |\n|---|---|---|---|\n"
        );
        var before = Alive();
        for (var n = 1; n <= units; n++)
        {
            var drawn = DrawnUnit.Draw(new UnitModel(sheet), n).Readings.Readings;
            await EntryFigures.KnownAsync(bench, diagnoses, await EntryFigures.BeginAsync(bench, sheet, drawn, Readings));
            self.Refresh();
            var (peak, alive) = (self.PeakWorkingSet64 / 1e6, Alive());
            var row = string.Create(CultureInfo.InvariantCulture, $"| {n} | {alive:F1} MB | {alive - before:F1} MB | {peak:F0} MB |");
            Console.Error.WriteLine(row);
            table.AppendLine(row);
            before = alive;
        }
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"\n{Readings} readings a unit, drawn with faults; findings one after another in one process, which has no pages to serve. Kept: {diagnoses.Counted.Count} of {diagnoses.Counted.Limit}."
        );
        var most = self.PeakWorkingSet64 / 1e6;
        string[] broken = most > MostMegabytes ? [FormattableString.Invariant($"{most:F0} MB, {MostMegabytes} MB are allowed")] : [];
        return new Figures("memory", table.ToString(), broken).Report();
    }

    private static double Alive() => GC.GetTotalMemory(forceFullCollection: true) / 1e6;
}
