using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

/// <summary>Which readings of the small ladder speak for a fault and which against it.</summary>
public class ForAndAgainstTests
{
    private static DiagnosisResult Diagnose(params (int Reading, double Value)[] read) =>
        Diagnoser.Run(SmallLadder.Unit.Model, SmallLadder.Taken(read), new DiagnosisOptions { RankNext = false });

    private static double Sound(int reading) => SmallLadder.Readings[reading].Of([.. SmallLadder.Parts.Select(p => p.Ohms)]);

    [Fact]
    public void The_reading_that_a_fault_moved_speaks_for_it()
    {
        // Three ohms more in the first wire: whatever reads it is high, whatever does not is as it should be.
        var worn = SmallLadder.Parts.Select(p => p.Ohms).ToArray();
        worn[0] = 3;
        var result = Diagnose([.. Enumerable.Range(0, 5).Select(r => (r, SmallLadder.Readings[r].Of(worn)))]);
        var best = result.Faults[0];
        Assert.Equal("w1:resistive", best.Mode.Name);
        var speech = result.Weights.Single(s => s.Mode.Name == "w1:resistive");
        Assert.True(speech.Readings[0].Nats > 3);
        Assert.All(
            speech.Readings.Where(s => s.Nats > 1),
            s => Assert.NotEqual(Sound(s.Place), SmallLadder.Readings[s.Place].Of(worn), 0.05)
        );
        Assert.Equal(speech.Readings.Select(s => Math.Abs(s.Nats)).OrderDescending(), speech.Readings.Select(s => Math.Abs(s.Nats)));
    }

    [Fact]
    public void A_sound_reading_speaks_against_every_fault_that_would_have_moved_it()
    {
        // One reading, and it is as it should be: no fault that is left has anything for it.
        var result = Diagnose((0, Sound(0)));
        Assert.All(result.Weights, s => Assert.All(s.Readings, r => Assert.True(r.Nats < 0.5)));
        Assert.True(result.SoundProbability > 0.5);
    }
}
