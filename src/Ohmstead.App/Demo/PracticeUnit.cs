using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Demo;

/// <summary>
/// A unit to practice on: what its owner says, what is wrong with it, and what a meter shows on it. All of it follows from the
/// type and the seed in its journal.
/// </summary>
internal sealed class PracticeUnit
{
    private static readonly ImmutableDictionary<string, Story[]> Stories = new Dictionary<string, Story[]>
    {
        ["solo-110"] =
        [
            new("Stops on the grade with four cars.", ("shoe:worn", 0.9)),
            new("Dead. It hummed last winter.", ("cord-1:open", 0)),
        ],
        ["twin-175"] =
        [
            new("The train on track 2 slows with cars behind it.", ("roller-2:worn", 1.1)),
            new("Track 1 is slow with anything behind the engine.", ("roller-1:worn", 0.9)),
            new("Trains slow down and the whistle is weak.", ("roller-2:worn", 1.1), ("disc:high-drop", 2.6)),
        ],
        ["step-230"] = [new("It hums and gets hot with nothing connected.", ("primary:shorted-turns", 20))],
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>More would be a list to search in.</summary>
    private const int MostChoices = 30;

    private readonly DrawnUnit drawn;

    private PracticeUnit(DrawnUnit drawn, ImmutableArray<FaultMode> planted) => (this.drawn, Planted) = (drawn, planted);

    /// <summary>What was planted, mended or not.</summary>
    public ImmutableArray<FaultMode> Planted { get; }

    /// <summary>What is said of a unit whose faults a person chose.</summary>
    public const string ChosenComplaint = "It does not run as it should.";

    /// <summary>A chosen fault is so far up its range of sizes [0..1]: seen by a usual meter, and not the worst there is.</summary>
    private const double ChosenSize = 0.6;

    /// <summary>What the owner of an invented unit says.</summary>
    public static string ComplaintOf(string sheetId, int seed) => StoryOf(sheetId, seed).Complaint;

    /// <summary>The unit as it is now; null when it is none to practice on, or its own circuit is not sound.</summary>
    /// <param name="sheet">Its type sheet.</param>
    public static PracticeUnit? Of(BenchUnit unit, TypeSheet sheet)
    {
        if (
            unit.All<PracticeBegun>().Select(p => p.Fact).LastOrDefault() is not { } begun
            || !Stories.ContainsKey(sheet.Id)
            || OwnSheet.Of(unit, sheet) is not { IsSound: true, Value: { } own }
        )
            return null;
        var catalogue = new FaultCatalogue(new(sheet));
        var planted = begun.Faults is { Length: > 0 } chosen ? Chosen(catalogue, chosen) : StoryOf(sheet.Id, begun.Seed).Planted;
        var mended = unit.All<PartChanged>().Select(p => p.Fact.Element).ToHashSet(StringComparer.Ordinal);
        var left = planted.Where(p => !mended.Contains(ElementOf(p.Fault))).ToArray();
        return new(new DrawnUnit(own, begun.Seed, left), [.. planted.Select(p => catalogue.Find(p.Fault)).OfType<FaultMode>()]);
    }

    /// <summary>The faults of a type that can be chosen, the usual ones first.</summary>
    public static ImmutableArray<FaultMode> Choices(TypeSheet sheet) =>
        [.. new FaultCatalogue(new(sheet)).Modes.OrderByDescending(m => m.Percent).Take(MostChoices)];

    /// <summary>The unit as it was taken in, with nothing read and nothing mended: what the tool begins with.</summary>
    public static BenchUnit Fresh(BenchUnit unit) =>
        UnitHistory.Fold([.. unit.Journal.Take(1 + unit.Journal.ToList().FindIndex(e => e.Fact is PracticeBegun))]);

    /// <summary>What the meter shows.</summary>
    public Shown Read(string readingId, BenchState bench) => drawn.Read(readingId, bench).Shown;

    private static (string Fault, double Size)[] Chosen(FaultCatalogue catalogue, string chosen) =>
        [
            .. chosen
                .Split(' ')
                .Select(catalogue.Find)
                .OfType<FaultMode>()
                .Select(m => (m.Name, m.HasSize ? m.SizeAt(ChosenSize) : m.MiddleSize)),
        ];

    private static Story StoryOf(string sheetId, int seed)
    {
        var all = Stories[sheetId];
        return all[(int)((uint)seed % (uint)all.Length)];
    }

    private static string ElementOf(string fault) => fault[..fault.IndexOf(':', StringComparison.Ordinal)];

    private sealed record Story(string Complaint, params (string Fault, double Size)[] Planted);
}
