using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>Whole sets of faults, and what is left of an answer that had to come at once.</summary>
public class WholeSetTests
{
    private const int Length = 12;

    [Fact]
    public void Every_twin_is_named_with_its_own_probability()
    {
        var unit = Chain(Length);
        var result = OverRangeTests.Diagnose(unit, OverRangeTests.Value(unit, "whole", unit.ReadListed("whole") + 5));
        // Five ohms more, somewhere: each wire alone by the same chance, its range of sizes the same.
        var single = result
            .Hypotheses.Where(h => h.Faults is [{ Mode: "resistive" }])
            .ToDictionary(h => h.Faults[0].Element, h => h.Probability, StringComparer.Ordinal);
        Assert.Equal(Length, single.Count);
        Assert.All(single.Values, p => Assert.Equal(single["w0"], p, 1e-9));
        Assert.Equal(
            result.Hypotheses.Select(h => h.Probability).OrderDescending(),
            result.Hypotheses.Select(h => h.Probability)
        );
        Assert.True(result.Hypotheses.Sum(h => h.Probability) <= 1 + 1e-9);
        Assert.True(single.Values.Sum() > 0.5);
        Assert.All(single, s => Assert.True(OverRangeTests.Chance(result, s.Key + ":resistive") >= s.Value - 1e-9));
    }

    [Fact]
    public void Overdue_from_the_start_the_chances_stay_as_they_were()
    {
        var unit = Chain(300);
        var readings = OverRangeTests.Unit(unit, [OverRangeTests.Value(unit, "whole", unit.ReadListed("whole") + 5)]);
        var result = Diagnoser.Run(unit.Model, readings, new DiagnosisOptions { IsOverdue = () => true });
        Assert.Equal(SearchStop.TimeUp, result.Effort.Stop);
        // Odds of 1/99 for each of two modes.
        Assert.All(result.Faults, f => Assert.Equal(1.0 / 101, f.Probability, 1e-6));
    }

    [Theory]
    [InlineData(false, 8)]
    [InlineData(true, 4)]
    public void With_the_time_up_the_least_number_of_sets_is_searched_and_half_of_it_when_late(bool isLate, int sets)
    {
        var unit = new BenchUnit(Reference.Twin160);
        var whole = OverRangeTests.Value(unit, "ohms-right", unit.ReadListed("ohms-right") + 5);
        var readings = OverRangeTests.Unit(unit, [whole, OverRangeTests.Value(unit, "ohms-left", unit.ReadListed("ohms-left"))]);
        var options = new DiagnosisOptions { IsTimeUp = () => true, IsLate = () => isLate, RankNext = false };
        var effort = Diagnoser.Run(unit.Model, readings, options).Effort;
        Assert.Equal((SearchStop.TimeUp, sets), (effort.Stop, effort.SetsExpanded));
    }

    [Fact]
    public void A_cancelled_diagnosis_gives_what_it_has()
    {
        var unit = Chain(Length);
        var readings = OverRangeTests.Unit(unit, [OverRangeTests.Value(unit, "whole", unit.ReadListed("whole") + 5)]);
        using var cancel = new CancellationTokenSource();
        var library = new ReadingLibrary(unit.Model);
        cancel.Cancel();
        var options = new DiagnosisOptions { Cancellation = cancel.Token };
        Assert.Equal(SearchStop.Cancelled, Diagnoser.Run(library, readings, options).Effort.Stop);
        // Nothing half done is remembered: the next one, with time, finds the fault.
        var whole = Diagnoser.Run(library, readings, new DiagnosisOptions());
        Assert.True(whole.Faults.Where(f => f.Mode.Mode == "resistive").Sum(f => f.Probability) > 0.9);
    }

    private static BenchUnit Chain(int length)
    {
        var wires = Enumerable
            .Range(0, length)
            .Select(n =>
                (
                    FormattableString.Invariant($"w{n}"),
                    FormattableString.Invariant($"n{n}"),
                    FormattableString.Invariant($"n{n + 1}"),
                    1.0
                )
            );
        return OverRangeTests
            .Parts([.. wires])
            .Reading("whole", "ohms", ["n0", FormattableString.Invariant($"n{length}")])
            .Unit();
    }
}
