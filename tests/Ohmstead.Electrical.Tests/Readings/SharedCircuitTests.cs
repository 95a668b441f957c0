using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Readings in one state are read off one solution; each is what it is by itself.</summary>
public class SharedCircuitTests
{
    private const int Units = 25;

    [Theory]
    [InlineData("tests/Reference/sample/twin-160.sheet.json", 33)]
    [InlineData("demo/step-230.sheet.json", 41)]
    public void Whatever_is_wrong_with_a_unit_each_reads_as_by_itself(string file, int circuits)
    {
        var model = new UnitModel(Reference.Sheet(file));
        var catalogue = new FaultCatalogue(model);
        var readings = model.Sheet.Readings;
        var set = new ReadingSet(model, catalogue, readings.Select(r => (r, r.State)), Meter.Usual);
        // Ohms and direct current have a circuit for every pair of probes; the rest were counted in the sheet, state by state.
        Assert.Equal(circuits, Enumerable.Range(0, set.Count).Select(set.GroupOf).Distinct().Count());
        Assert.Equal(Enumerable.Range(0, set.Count), set.InGroups.Order());
        var together = new Predictor(set);
        var alone = readings.Select(r => new Predictor(new ReadingSet(model, catalogue, [(r, r.State)], Meter.Usual))).ToArray();
        var random = new Random(11);
        for (var n = 0; n < Units; n++)
        {
            var faults = Drawn(catalogue, random);
            double[] factors = [.. model.Parameters.Select(p => Math.Exp(p.Sigma * ((4 * random.NextDouble()) - 2)))];
            using var unit = together.Assume(faults, factors);
            var all = unit.ScaledAll();
            for (var r = 0; r < set.Count; r++)
            {
                using var same = alone[r].Assume(faults, factors);
                // A millionth of a meter's limit, and of the value: the last step of a core's voltage that is not taken.
                Assert.Equal(same.Scaled(0)!.Value, all[r]!.Value, 1e-5 * Math.Max(Math.Abs(all[r]!.Value), 1));
            }
        }
    }

    /// <summary>Three readings of two states: what was asked of the other meanwhile is not taken for the same.</summary>
    [Fact]
    public void Another_unit_or_state_in_between_changes_nothing()
    {
        var twin = new BenchUnit(Reference.Twin160);
        var readings = new[] { "volts-17", "left-load", "volts-5" }.Select(id => twin.Model.Sheet.FindReading(id)!).ToArray();
        var predictor = new Predictor(new ReadingSet(twin.Model, twin.Catalogue, readings.Select(r => (r, r.State)), Meter.Usual));
        using var sound = predictor.Assume();
        using var worn = predictor.Assume(twin.Faults("main:shorted-turns=3"));
        var (a, other, b) = (sound.Value(0), sound.Value(1), sound.Value(2));
        Assert.Equal(a, sound.Value(0));
        Assert.NotEqual(b, worn.Value(2));
        Assert.Equal(b, sound.Value(2));
        Assert.Equal(other, sound.Value(1));
    }

    [Fact]
    public void States_are_the_same_where_controls_loads_straps_and_source_are()
    {
        var state = Reference.Twin160.FindReading("left-load")!.State;
        Assert.True(state.IsSameAs(state with { Loads = [.. state.Loads] }));
        Assert.False(state.IsSameAs(state with { Celsius = state.Celsius + 1 }));
        Assert.False(state.IsSameAs(state with { Loads = [] }));
        Assert.False(state.IsSameAs(state with { Lifted = ["pilot"] }));
        Assert.False(
            state.IsSameAs(
                state with
                {
                    Joined =
                    [
                        ["post-5", "post-17"],
                    ],
                }
            )
        );
        Assert.False(state.IsSameAs(state with { Source = null }));
        var at = state.Controls.First();
        Assert.False(
            state.IsSameAs(state with { Controls = state.Controls.SetItem(at.Key, new ControlPosition(0.123, at.Value.Selector)) })
        );
        Assert.False(state.IsSameAs(state with { Controls = state.Controls.Remove(at.Key) }));
        var strapped = state with
        {
            Joined =
            [
                ["a", "b"],
            ],
        };
        Assert.True(
            strapped.IsSameAs(
                state with
                {
                    Joined =
                    [
                        ["a", "b"],
                    ],
                }
            )
        );
        Assert.False(
            strapped.IsSameAs(
                state with
                {
                    Joined =
                    [
                        ["a", "c"],
                    ],
                }
            )
        );
    }

    /// <summary>None to three faults, rewired windings among them.</summary>
    private static Fault[] Drawn(FaultCatalogue catalogue, Random random) =>
        [
            .. Enumerable
                .Range(0, random.Next(4))
                .Select(_ => catalogue.Modes[random.Next(catalogue.Modes.Length)])
                .DistinctBy(m => m.Target)
                .Select(m => new Fault(m, m.MiddleSize)),
        ];
}
