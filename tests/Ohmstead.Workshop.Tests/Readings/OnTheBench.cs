using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>A unit of the sample sheet on a small invented bench, its journal written fact by fact.</summary>
internal sealed class OnTheBench
{
    private static readonly Guid Id = new(7, 0, 0, new byte[8]);
    private static readonly DateTimeOffset Noon = new(2026, 1, 5, 12, 0, 0, TimeSpan.Zero);
    private readonly List<Entry> journal = [];
    private UnitDoubts doubts = UnitDoubts.None;

    public OnTheBench() => Add(new TakenIn("F-7", "twin-160", "an owner", "hums"));

    public static TypeSheet Sheet { get; } = SheetOf("tests/Reference/sample/twin-160.sheet.json");

    /// <summary>An averaging hand meter that alone reads ohms and volts, a true-RMS one, and two insulation testers; two resistors and a lamp.</summary>
    public static Shop Shop { get; } =
        new(
            "The bench",
            "",
            "USD",
            50,
            "a4",
            [
                new(
                    "hand",
                    "Hand meter",
                    false,
                    Errors(
                        ("ohms", new(0.8, 0.05, 0, 0.2)),
                        ("ac-volts", new(0.8, 0.03, 0, 0)),
                        ("dc-volts", new(0.8, 0.03, 0, 0)),
                        ("ac-amps", new(0.8, 0.01, 0, 0)),
                        ("watts", new(0.8, 0.5, 0, 0))
                    )
                ),
                new("good", "True RMS meter", true, Errors(("ac-volts", new(0.3, 0.01, 0, 0)))),
                new("tester", "Insulation tester", true, Errors(("insulation-ohms", new(5, 20e3, 0, 0)))),
                new("fine", "Finer insulation tester", true, Errors(("insulation-ohms", new(1, 1e3, 0, 0)))),
            ],
            [new("r-4", "Resistor 4 Ω", 4, 0, 0), new("r-47", "Resistor 47 Ω", 47, 0, 0), new("lamps", "Two car lamps", 3.43, 12, 3.5)],
            [],
            []
        );

    public BenchUnit Unit => UnitHistory.Fold(journal) with { Doubts = doubts };

    public TypeSheet Own => OwnSheet.Of(Unit, Sheet).Required;

    public UnitModel Model => new(Own);

    public UnitReadings Readings => BenchReadings.Of(Unit, Model, Shop).Required;

    public ReadingOffer Offer(string id) => ReadingOffer.All(Unit, Model, Readings, Shop).Single(o => o.Spec.Id == id);

    public OnTheBench Add(Fact fact)
    {
        var n = journal.Count + 1;
        journal.Add(new Entry(new Guid(n, 1, 0, new byte[8]), Id, n, Noon.AddMinutes(n), "bench", fact));
        return this;
    }

    public OnTheBench Read(string id, Shown shown, BenchState? bench = null) => Add(new ReadingEntered(id, shown, bench ?? Unit.Bench));

    public OnTheBench Read(string id, double value, BenchState? bench = null) => Read(id, Shown.Number(value), bench);

    /// <summary>A diagnosis of what was entered so far doubts these readings, the leads and the bench.</summary>
    public OnTheBench Doubt(SlipKind kind, string[] slips, double leadOhms = 0, params Doubt[] bench)
    {
        doubts = new(
            journal.Count,
            new([.. slips], leadOhms),
            [.. slips.Select(s => new ProbableSlip(s, kind, null, null, 0.95))],
            [.. bench]
        );
        return this;
    }

    /// <summary>A diagnosis of what was entered so far leaves these readings out, and takes none of them for a slip.</summary>
    public OnTheBench LeaveOut(params string[] readings)
    {
        doubts = new(journal.Count, new([.. readings], 0), [], []);
        return this;
    }

    /// <summary>The next search ends in trouble: what was doubted stays.</summary>
    public OnTheBench Trouble(string words)
    {
        doubts = doubts with { Trouble = words };
        return this;
    }

    /// <summary>The four cold gates of the sheet, passed with this meter.</summary>
    public OnTheBench ColdGates() =>
        Read("blades", 4.2).Read("blades-posts", Shown.OverRange).Read("insulation-core", 300e6).Read("insulation-posts", 250e6);

    public static TypeSheet SheetOf(string file) => TypeSheetFile.Read(File.ReadAllText(Path.Combine(Root(), file))).Required;

    /// <summary>Files of the repository in a folder and below it, from the root.</summary>
    public static IReadOnlyList<string> Files(string folder, string pattern) =>
        [
            .. Directory
                .EnumerateFiles(Path.Combine(Root(), folder), pattern, SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(Root(), f))
                .Order(StringComparer.Ordinal),
        ];

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Ohmstead.slnx")))
            folder = folder.Parent ?? throw new InvalidOperationException("no root");
        return folder.FullName;
    }

    private static System.Collections.Immutable.ImmutableSortedDictionary<string, ShopMeterError> Errors(
        params (string Quantity, ShopMeterError Error)[] errors
    ) =>
        System.Collections.Immutable.ImmutableSortedDictionary.CreateRange(
            StringComparer.Ordinal,
            errors.Select(e => KeyValuePair.Create(e.Quantity, e.Error))
        );
}
