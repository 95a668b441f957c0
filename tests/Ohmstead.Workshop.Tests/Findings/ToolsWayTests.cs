using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>The tool on a practice unit, with diagnoses that a test says: which reading it takes, and when it is done.</summary>
public class ToolsWayTests
{
    private static readonly TypeSheet Sheet = OnTheBench.SheetOf("demo/twin-175.sheet.json");
    private static readonly FaultCatalogue Catalogue = new(new UnitModel(Sheet));

    private static BenchUnit Fresh =>
        UnitHistory.Fold([
            .. new Fact[] { new TakenIn("P-1", "twin-175", "", ""), new PracticeBegun(7) }.Select(
                (f, n) => new Entry(new Guid(n + 1, 0, 0, new byte[8]), new Guid(9, 0, 0, new byte[8]), n + 1, default, "bench", f)
            ),
        ]);

    private static NextReading Next(string id, params string[] blocked) => new(Sheet.FindReading(id)!, 1, 1, [.. blocked]);

    private static DiagnosisResult Says(
        ImmutableArray<(string Fault, double Chance)> faults,
        ImmutableArray<NextReading> next,
        params string[] alike
    ) =>
        new(
            0,
            [.. faults.Select(f => new FaultProbability(Catalogue.Find(f.Fault)!, f.Chance, null, null, null))],
            [],
            alike.Length == 0
                ? []
                :
                [
                    [.. alike.Select(a => Catalogue.Find(a)!)],
                ],
            [],
            [],
            true,
            next,
            new SearchEffort(1, 1, 1, SearchStop.Complete)
        );

    private static (PracticeWay Way, bool IsFound) Go(Func<int, DiagnosisResult> says, params string[] planted) =>
        new ToolsWay((_, _) => Shown.Number(4), readings => says(readings.Readings.Length)).Go(
            Fresh,
            Sheet,
            Shop.Usual,
            [.. planted.Select(p => Catalogue.Find(p)!)],
            _ => { }
        );

    [Fact]
    public void It_takes_the_best_reading_and_the_check_that_locks_it_before_that_and_ends_when_all_is_very_likely()
    {
        var (way, isFound) = Go(
            n =>
                Says(
                    [("roller-1:worn", n < 3 ? 0.74 : 0.75), ("disc:high-drop", n < 2 ? 0.1 : 0.9)],
                    [Next("load-1", "blades"), Next("ohms-1"), Next("ohms-2")]
                ),
            "roller-1:worn",
            "disc:high-drop"
        );
        Assert.True(isFound);
        // What can be read now stands before what is locked.
        Assert.Equal(["ohms-1", "ohms-2", "blades"], way.Steps.Select(s => s.Spec.Id));
        Assert.Equal(way.Steps.Sum(s => s.Spec.Minutes), way.Minutes, 9);
    }

    /// <summary>Two faults that no reading tells apart count together; before a first reading nothing is found.</summary>
    [Fact]
    public void Faults_that_no_reading_tells_apart_count_as_one()
    {
        DiagnosisResult Pair(string[] alike) =>
            Says([("cord-1:open", 0.45), ("cord-2:open", 0.45)], [Next("blades"), Next("ohms-1")], alike);
        var (way, isFound) = Go(_ => Pair(["cord-1:open", "cord-2:open"]), "cord-1:open");
        Assert.Equal((1, true), (way.Steps.Length, isFound));
        (way, isFound) = Go(_ => Pair([]), "cord-1:open");
        Assert.Equal((2, false), (way.Steps.Length, isFound));
    }

    [Fact]
    public void It_gives_up_in_the_end_and_reads_nothing_twice()
    {
        var all = Sheet.Readings.Where(r => r.State.Source is not { IsMains: true }).Select(r => Next(r.Id)).ToImmutableArray();
        var (way, isFound) = Go(_ => Says([], all), "roller-1:worn");
        Assert.Equal((ToolsWay.MostReadings, false), (way.Steps.Length, isFound));
        Assert.Equal(way.Steps.Length, way.Steps.Select(s => s.Spec.Id).Distinct().Count());
    }
}
