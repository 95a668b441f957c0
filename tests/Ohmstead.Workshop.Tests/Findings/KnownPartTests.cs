using Ohmstead.Workshop.Findings;
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
}
