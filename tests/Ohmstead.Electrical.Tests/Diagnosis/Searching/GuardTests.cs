using Ohmstead.Electrical.Diagnosis;
using static Ohmstead.Electrical.Tests.Diagnosis.DeadPath;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>The caller's last guard: where it strikes something is left out, and the answer owns up to it.</summary>
public class GuardTests
{
    [Fact]
    public void A_guard_that_strikes_anywhere_is_owned_up_to()
    {
        var (whole, asked) = (Answer(Options), 0L);
        Answer(Options with { IsOverdue = () => ++asked < 0 });
        Assert.True(asked > 1000);
        // At whichever question it strikes: cut, and it says so.
        foreach (var share in new[] { 0, 0.01, 0.1, 0.3, 0.6, 0.9, 0.99, 1 })
        {
            var (left, last) = ((long)(share * (asked - 1)), 0L);
            var result = Diagnoser.Run(Twin.Model, Taken, Options with { IsOverdue = () => last++ == left });
            Assert.Equal((SearchStop.TimeUp, false), (result.Effort.Stop, result.Effort.IsFinished));
        }
        // One that never strikes, however slow the machine, changes nothing.
        Assert.Equal(
            whole,
            Answer(
                Options with
                {
                    IsOverdue = () =>
                    {
                        Thread.SpinWait(1000);
                        return false;
                    },
                }
            )
        );
    }

    [Fact]
    public void Struck_from_the_start_the_chances_stay_as_they_were()
    {
        var unit = WireBench.Chain(300);
        var readings = WireBench.Unit(unit, [WireBench.Value(unit, "whole", unit.ReadListed("whole") + 5)]);
        var result = Diagnoser.Run(unit.Model, readings, new DiagnosisOptions { IsOverdue = () => true });
        Assert.Equal(SearchStop.TimeUp, result.Effort.Stop);
        // Odds of 1/99 for each of two modes.
        Assert.All(result.Faults, f => Assert.Equal(1.0 / 101, f.Probability, 1e-6));
    }
}
