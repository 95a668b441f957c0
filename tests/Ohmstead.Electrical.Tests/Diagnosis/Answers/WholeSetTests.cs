using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

/// <summary>Whole sets of faults, and what is left of an answer that had to come at once.</summary>
public class WholeSetTests
{
    private const int Length = 12;

    [Fact]
    public void Every_twin_is_named_with_its_own_probability()
    {
        var unit = WireBench.Chain(Length);
        var result = WireBench.Diagnose(unit, WireBench.Value(unit, "whole", unit.ReadListed("whole") + 5));
        // Five ohms more, somewhere: each wire alone by the same chance, its range of sizes the same.
        var single = result
            .Hypotheses.Where(h => h.Faults is [{ Mode: "resistive" }])
            .ToDictionary(h => h.Faults[0].Element, h => h.Probability, StringComparer.Ordinal);
        Assert.Equal(Length, single.Count);
        Assert.All(single.Values, p => Assert.Equal(single["w0"], p, 1e-9));
        Assert.Equal(result.Hypotheses.Select(h => h.Probability).OrderDescending(), result.Hypotheses.Select(h => h.Probability));
        Assert.True(result.Hypotheses.Sum(h => h.Probability) <= 1 + 1e-9);
        Assert.True(single.Values.Sum() > 0.5);
        Assert.All(single, s => Assert.True(WireBench.Chance(result, s.Key + ":resistive") >= s.Value - 1e-9));
    }

    [Fact]
    public void A_cancelled_diagnosis_gives_what_it_has()
    {
        var unit = WireBench.Chain(Length);
        var readings = WireBench.Unit(unit, [WireBench.Value(unit, "whole", unit.ReadListed("whole") + 5)]);
        using var cancel = new CancellationTokenSource();
        var library = new ReadingLibrary(unit.Model);
        cancel.Cancel();
        var options = new DiagnosisOptions { Cancellation = cancel.Token };
        var effort = Diagnoser.Run(library, readings, options).Effort;
        Assert.Equal((SearchStop.Cancelled, false), (effort.Stop, effort.IsFinished));
        // Nothing half done is remembered: the next one, with time, finds the fault.
        var whole = Diagnoser.Run(library, readings, new DiagnosisOptions());
        Assert.True(whole.Faults.Where(f => f.Mode.Mode == "resistive").Sum(f => f.Probability) > 0.9);
    }

    /// <summary>Two rows of twenty wires, in each of which one is poor: four hundred pairs.</summary>
    [Fact]
    public void Two_hundred_are_named_and_no_more()
    {
        var wires = Enumerable
            .Range(0, 40)
            .Select(n => (Name("w", n), Name(n < 20 ? "a" : "b", n), Name(n < 19 || n == 39 ? "a" : "b", n + 1), 1.0));
        var unit = WireBench.Parts([.. wires]).Reading("first", "ohms", ["a0", "b20"]).Reading("second", "ohms", ["b20", "a40"]).Unit();
        var result = WireBench.Diagnose(
            unit,
            WireBench.Value(unit, "first", unit.ReadListed("first") + 5),
            WireBench.Value(unit, "second", unit.ReadListed("second") + 8)
        );
        Assert.Equal(200, result.Hypotheses.Length);
        Assert.All(result.Hypotheses.Take(100), h => Assert.Equal(2, h.Faults.Length));
    }

    private static string Name(string of, int number) => FormattableString.Invariant($"{of}{number}");
}
