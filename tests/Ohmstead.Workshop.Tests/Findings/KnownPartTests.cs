using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>What is known of a part of a unit.</summary>
public class KnownPartTests
{
    private static KnownPart? Of(OnTheBench bench, string id) =>
        KnownPart.Of(id, bench.Unit, bench.Own, ReadingOffer.All(bench.Unit, bench.Model, bench.Readings, OnTheBench.Shop), null);

    [Fact]
    public void Every_element_slider_and_terminal_of_the_sheet_is_known()
    {
        var bench = new OnTheBench();
        var ids = bench
            .Own.Elements.SelectMany(e => e.OtherTerminals.Concat([e.Id, e.From, e.To]))
            .Concat(bench.Own.Windings.SelectMany(w => w.Sliders).Select(s => s.Id));
        Assert.All(ids, id => Assert.NotEmpty(Of(bench, id)!.Values));
        Assert.Null(Of(bench, "no-such-part"));
    }

    [Fact]
    public void A_reading_touches_the_part_whose_terminals_its_probes_are_on()
    {
        var bench = new OnTheBench().Read("blades", 3.8);
        var cord = Of(bench, "cord-1")!;
        Assert.Equal("blades", cord.Readings[0].Spec.Id);
        Assert.DoesNotContain(Of(bench, "disc-left")!.Readings, r => r.Spec.Id == "blades");
    }

    /// <summary>Of the faults of one part the most probable is named; a part is new in a unit however it got there, and not when mended.</summary>
    [Fact]
    public void A_part_has_the_chance_and_the_words_of_its_most_probable_fault()
    {
        var modes = new FaultCatalogue(new UnitModel(OnTheBench.Sheet)).Modes.Where(m => m.Element == "disc-left").Take(2).ToArray();
        var result = new DiagnosisResult(
            0,
            [new(modes[0], 0.1, null, null, null), new(modes[1], 0.6, null, null, null)],
            [],
            [],
            [],
            [],
            true,
            [],
            new SearchEffort(1, 1, 1, SearchStop.Complete)
        );
        Assert.Equal(0.6, KnownPart.Suspicion(result)["disc-left"]);
        Assert.StartsWith(
            Workshop.Words.PartNames.Mode(OnTheBench.Sheet, modes[1]),
            KnownPart.Suspected(OnTheBench.Sheet, result)["disc-left"],
            StringComparison.Ordinal
        );
        Assert.Equal(modes[1], WorkToDo.Suspected(result, "disc-left")!.Mode);
        Assert.Null(WorkToDo.Suspected(result, "disc-right"));
        var bench = new OnTheBench()
            .Add(new PartChanged("roller-left", PartChange.Renewed, null, ""))
            .Add(new PartChanged("w-5", PartChange.Rewired, null, ""));
        Assert.Equal(["roller-left"], KnownPart.Renewed(bench.Unit));
    }
}
