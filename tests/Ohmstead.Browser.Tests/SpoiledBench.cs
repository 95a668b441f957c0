using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Browser.Tests;

/// <summary>One workshop with a unit for each way in which a bench does not match its type sheet, each read to the end.</summary>
public sealed class SpoiledBench : IAsyncLifetime
{
    /// <summary>What the shop's first meter shows with its leads joined, as the shop knows it [Ω].</summary>
    private const double KnownLeads = 0.2;

    internal RunningTool Tool { get; private set; } = null!;

    /// <summary>Noted ten times too high: 6.1 V at the 6 V post.</summary>
    internal static Guid Slipped { get; } = IdOf(1);

    /// <summary>The series lamp's check noted ten times too high.</summary>
    internal static Guid SlippedCheck { get; } = IdOf(2);

    /// <summary>0.3 Ω of the leads more than the shop knows, in every ohm reading.</summary>
    internal static Guid LongLeads { get; } = IdOf(3);

    /// <summary>The line at 111 V, noted as 117 V.</summary>
    internal static Guid LowLine { get; } = IdOf(4);

    /// <summary>Low-voltage coils a quarter higher in ohms, core loss more by 60 %, disc drop more by half.</summary>
    internal static Guid OtherBatch { get; } = IdOf(5);

    /// <summary>11 W more in the core, as of turns that touch.</summary>
    internal static Guid HotCore { get; } = IdOf(6);

    /// <inheritdoc/>
    public async ValueTask InitializeAsync() => Tool = await RunningTool.StartFilledAsync(FillAsync, "twin-175", "solo-110");

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => Tool.DisposeAsync();

    /// <summary>What a meter shows on a unit, by the id of the reading; OL as infinity.</summary>
    internal static Dictionary<string, double> Values(
        string sheet,
        double line = 0,
        double leads = KnownLeads,
        bool isOpen = false,
        Action<JsonNode>? really = null
    )
    {
        var text = JsonNode.Parse(File.ReadAllText(RunningTool.SheetFile(sheet)))!;
        really?.Invoke(text);
        var model = new UnitModel(TypeSheetFile.Read(text.ToJsonString()).Required);
        var specs = model
            .Sheet.Readings.Where(r => (isOpen || !r.IsOpenCase) && r.State.Lifted.IsEmpty)
            .Select(r => (r, AtLine(model.Sheet, r.State, line)))
            .ToList();
        return specs
            .Zip(Prediction.Run(model, specs, [], isAveraging: true))
            .ToDictionary(
                p => p.First.r.Id,
                p => Digits(p.Second.Value + (p.First.r.Quantity == Quantity.Ohms ? leads : 0)),
                StringComparer.Ordinal
            );
    }

    private static ReadingState AtLine(TypeSheet sheet, ReadingState state, double line) =>
        line > 0 && state.Source is { IsDirect: false } source && source.Volts == sheet.SupplyVolts
            ? state with
            {
                Source = source with { Volts = line },
            }
            : state;

    private static double Digits(double value) =>
        double.IsInfinity(value) ? value : double.Parse(value.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static async Task FillAsync(Store store)
    {
        var solo = Values("solo-110");
        await AddAsync(store, Slipped, "S-1", "solo-110", With(solo, "volts-6", 10 * solo["volts-6"]), "usual");
        await AddAsync(store, SlippedCheck, "S-2", "solo-110", With(solo, "lamp-40", 10 * solo["lamp-40"]), "usual");
        // A meter of its own: its leads are entered on the way.
        await AddAsync(store, LongLeads, "S-3", "solo-110", Values("solo-110", leads: KnownLeads + 0.3), "true-rms");
        await AddAsync(store, LowLine, "S-4", "solo-110", Values("solo-110", line: 111), "usual");
        await AddAsync(store, OtherBatch, "S-5", "twin-175", Values("twin-175", isOpen: true, really: Batch), "usual");
        await AddAsync(store, HotCore, "S-6", "solo-110", Values("solo-110", really: s => s["cores"]![0]!["lossOhms"] = 744), "usual");
    }

    private static void Batch(JsonNode sheet)
    {
        foreach (var element in sheet["elements"]!.AsArray())
            if ((string)element!["kind"]! == "winding" && (string)element["id"]! != "primary")
                element["ohms"] = 1.25 * (double)element["ohms"]!;
            else if ((string)element["kind"]! == "rectifier")
                foreach (var field in (string[])["slopeVolts", "seriesOhms"])
                    element[field] = 1.5 * (double)element[field]!;
        sheet["cores"]![0]!["lossOhms"] = (double)sheet["cores"]![0]!["lossOhms"]! / 1.6;
    }

    private static Dictionary<string, double> With(Dictionary<string, double> values, string id, double value) =>
        new(values, StringComparer.Ordinal) { [id] = Digits(value) };

    private static async Task AddAsync(Store store, Guid unit, string tag, string sheet, Dictionary<string, double> values, string meter)
    {
        Fact[] facts =
        [
            new TakenIn(tag, sheet, "A neighbor", "It hums."),
            .. new[] { "cord", "plug", "sleeves", "case" }.Select(part => new ConditionNoted(part, "good", Decision.Leave, "")),
            .. values.Select(v => new ReadingEntered(
                v.Key,
                double.IsInfinity(v.Value) ? Shown.OverRange : Shown.Number(v.Value),
                BenchState.AsSheet with
                {
                    MeterId = meter,
                }
            )),
            new StageClosed(Stage.LookOver, true, ""),
        ];
        await store.AppendAsync(
            unit,
            0,
            [
                .. facts.Select(
                    (f, n) =>
                        new NewEntry(
                            new Guid(unit.ToByteArray()[0], (short)(n + 1), 7, new byte[8]),
                            DateTimeOffset.UnixEpoch.AddMinutes(n),
                            "bench",
                            f
                        )
                ),
            ],
            CancellationToken.None
        );
    }

    private static Guid IdOf(int n) => new(n, 0, 1, new byte[8]);
}
