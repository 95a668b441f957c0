using System.Text.Json;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Readings;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Screens on a real store in a folder of their own, with one unit of the demo's twin-throttle kind.</summary>
public sealed class ScreenBench : IAsyncDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("ohmstead-screens-").FullName;
    private Store store = null!;
    private int made;

    public static readonly Guid UnitId = new(9, 0, 0, new byte[8]);

    private UnitDiagnoses desk = null!;

    public BunitContext Context { get; } = new();

    public Bench Bench { get; private set; } = null!;

    public static Task<ScreenBench> OpenAsync(params Fact[] facts) => OpenAsync(store => store, facts);

    /// <summary>With a diagnosis that finds no fault and doubts what a test says, at once.</summary>
    public static Task<ScreenBench> DoubtingAsync(Func<UnitReadings, DiagnosisResult, DiagnosisResult> more, params Fact[] facts) =>
        OpenAsync(store => store, facts, (_, readings, _) => more(readings, NoFault(readings)));

    /// <summary>What a diagnosis says of a unit with nothing wrong.</summary>
    public static DiagnosisResult NoFault(UnitReadings readings) =>
        new(
            0.9,
            [],
            [],
            [],
            [
                .. readings
                    .Readings.Where(r => r.IsTaken)
                    .Select(r => new ExplainedReading(r.Spec, r.Value, r.Outcome == Outcome.OverRange, null, 0)),
            ],
            [],
            true,
            [],
            new SearchEffort(1, 1, 1, SearchStop.Complete)
        );

    /// <param name="around">Puts something between the screens and the store.</param>
    public static Task<ScreenBench> OpenAsync(Func<IStore, IStore> around, params Fact[] facts) => OpenAsync(around, facts, null);

    /// <summary>On a clock that a test moves.</summary>
    public static Task<ScreenBench> OpenAsync(TimeProvider time, params Fact[] facts) => OpenAsync(store => store, facts, null, time);

    private static async Task<ScreenBench> OpenAsync(
        Func<IStore, IStore> around,
        Fact[] facts,
        Func<ReadingLibrary, UnitReadings, DiagnosisOptions, DiagnosisResult>? diagnose,
        TimeProvider? time = null
    )
    {
        var screens = new ScreenBench();
        screens.store = await Store.OpenAsync(screens.folder, TimeProvider.System, Xunit.TestContext.Current.CancellationToken);
        var sheet = await File.ReadAllTextAsync(
            Path.Combine(Root(), "demo", "twin-175.sheet.json"),
            Xunit.TestContext.Current.CancellationToken
        );
        await screens.store.SaveDocumentAsync(
            Bench.SheetKind,
            "twin-175",
            0,
            sheet,
            DateTimeOffset.UnixEpoch,
            Xunit.TestContext.Current.CancellationToken
        );
        screens.Bench = new Bench(
            around(screens.store),
            screens.store.Photos,
            time ?? TimeProvider.System,
            () => new Guid(1, 2, 0, BitConverter.GetBytes((long)++screens.made << 32))
        );
        await screens.Bench.EnterAsync(UnitId, 0, "bench", [new TakenIn("F-9", "twin-175", "an owner", "hums"), .. facts]);
        screens.Context.Services.AddSingleton(screens.Bench);
        screens.desk = new UnitDiagnoses(screens.Bench, NullLogger<UnitDiagnoses>.Instance, diagnose);
        screens.Context.Services.AddSingleton(screens.desk);
        screens.Context.Services.AddSingleton(new ShopMinutes(screens.Bench));
        screens.Context.Services.AddSingleton(new SiteOptions(0, IsOnLan: false, IsDemo: false));
        screens.Context.Services.AddScoped<PageConnection>();
        screens.Context.JSInterop.Mode = JSRuntimeMode.Loose;
        return screens;
    }

    public static ReadingEntered Read(string id, double value) => new(id, Shown.Number(value), BenchState.AsSheet);

    /// <summary>The cold gates of the sheet, passed.</summary>
    public static Fact[] ColdGates { get; } =
    [
        Read("blades", 3.8),
        new ReadingEntered("blades-posts", Shown.OverRange, BenchState.AsSheet),
        Read("insulation-core", 300e6),
        Read("insulation-posts", 250e6),
    ];

    /// <summary>The parts that can have something live in reach, looked at and good.</summary>
    public static Fact[] NothingLive { get; } =
    [.. new[] { "cord", "plug", "sleeves", "case" }.Select(item => new ConditionNoted(item, "good", Decision.Leave, ""))];

    public async Task<BenchUnit> UnitAsync() => (await Bench.ReadAsync(UnitId))!;

    /// <summary>The readings that stand, in words of id and value.</summary>
    public async Task<string[]> StandingAsync() =>
        [
            .. (await UnitAsync()).CurrentReadings.Select(r =>
                $"{r.Fact.ReadingId} {JsonSerializer.Serialize(r.Fact.Shown.Value)} {r.Fact.Shown.Kind}"
            ),
        ];

    /// <summary>The program ends and starts again on the same folder; nothing is worked out yet.</summary>
    public async Task RestartAsync()
    {
        await desk.DisposeAsync();
        await store.DisposeAsync();
        store = await Store.OpenAsync(folder, TimeProvider.System, Xunit.TestContext.Current.CancellationToken);
        Bench = new Bench(store, store.Photos, TimeProvider.System, Guid.NewGuid);
        desk = new UnitDiagnoses(Bench, NullLogger<UnitDiagnoses>.Instance);
    }

    public async ValueTask DisposeAsync()
    {
        await Context.DisposeAsync();
        await desk.DisposeAsync();
        await store.DisposeAsync();
        OpenWorkshop.Remove(folder);
    }

    private static string Root()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "Ohmstead.slnx")))
            at = at.Parent ?? throw new InvalidOperationException("no root");
        return at.FullName;
    }
}
