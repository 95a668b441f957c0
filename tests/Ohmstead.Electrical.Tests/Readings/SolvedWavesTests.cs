using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Waves that were solved before: found, they are what solving gives, and count as much for a search.</summary>
public class SolvedWavesTests
{
    private static readonly BenchUnit Twin = new(Reference.Twin160);

    private static readonly ReadingSet Set = new(
        Twin.Model,
        Twin.Catalogue,
        new[] { "right-first-dc", "left-first-dc", "right-load" }.Select(id => Twin.Model.Sheet.FindReading(id)!).Select(r => (r, r.State)),
        Meter.Usual
    );

    /// <summary>Asked twice, of two threads' scratch; a reading without a wave in between.</summary>
    [Fact]
    public void A_unit_that_is_asked_for_again_reads_as_if_it_were_solved_again()
    {
        var waves = new SolvedWaves();
        Predictor[] sharing = [new(Set, waves), new(Set, waves)];
        foreach (var fault in (string[])["main:shorted-turns=3", "main:shorted-turns=4", "primary:shorted-turns=3"])
        {
            var plain = new Predictor(Set);
            using var solved = plain.Assume(Twin.Faults(fault));
            double?[] all = [.. Enumerable.Range(0, Set.Count).Select(solved.Value)];
            foreach (var predictor in sharing)
            {
                var (before, work) = (predictor.Solved, predictor.Work);
                using var kept = predictor.Assume(Twin.Faults(fault));
                Assert.Equal(all, Enumerable.Range(0, Set.Count).Select(kept.Value));
                Assert.Equal((plain.Solved, plain.Work), (predictor.Solved - before, predictor.Work - work));
            }
        }
        Assert.Equal(21, sharing[0].Work / 3);
    }

    /// <summary>What every fault changes in a unit's numbers is in its key; and which reading it is.</summary>
    [Fact]
    public void No_two_units_share_a_key()
    {
        var circuit = Set.Circuits[0].Usual;
        var nominal = Twin.Model.Nominal;
        var keys = new HashSet<(ulong, ulong)> { SolvedWaves.KeyOf(0, circuit, nominal) };
        Assert.True(keys.Add(SolvedWaves.KeyOf(1, circuit, nominal)));
        Assert.False(keys.Add(SolvedWaves.KeyOf(0, circuit, nominal.Copy())));
        foreach (var p in Twin.Model.Parameters)
        {
            var other = nominal.Copy();
            other.Scale(p, 1 + 1e-12);
            Assert.True(keys.Add(SolvedWaves.KeyOf(0, circuit, other)), p.ToString());
        }
        foreach (var mode in Twin.Catalogue.Modes)
        {
            var (faulty, fault) = (nominal.Copy(), new Fault(mode, mode.HasSize ? mode.Max : mode.MiddleSize));
            fault.ApplyTo(faulty);
            // Exchanged ends of a tapped winding are in the circuit.
            var laid = Set.Circuits[0].For([fault]);
            Assert.False(SolvedWaves.KeyOf(0, circuit, nominal) == SolvedWaves.KeyOf(0, laid, faulty), mode.Name);
        }
    }
}
