using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>Why a reading is proposed, on a sample unit whose left post sags under load.</summary>
public class NextReasoningTests
{
    private static readonly UnitModel Model = new(Reference.Twin160);

    /// <summary>The left post with a roller of 2 Ω under it, and nothing else read: roller, wires and joints are all probable.</summary>
    private static readonly UnitReadings Taken = new(
        "twin-160",
        120,
        1,
        Meter.Usual,
        [Read("left-load", new BenchUnit(Reference.Twin160).ReadListed("left-load", "roller-left:worn=2"))],
        []
    );

    private static readonly DiagnosisResult Result = Diagnoser.Run(Model, Taken, new DiagnosisOptions());
    private static readonly NextReasoning Reasoning = new(Model, Taken, Result);

    private static TakenReading Read(string id, double value)
    {
        var spec = Reference.Twin160.FindReading(id)!;
        return new TakenReading(spec, Outcome.Value, value, [], "", "", spec.State);
    }

    private static NextReason Of(string id) => Reasoning.Of(Result.Next.First(n => n.Spec.Id == id));

    [Fact]
    public void A_drop_across_the_roller_decides_between_the_roller_and_the_rest()
    {
        var reason = Of("drop-roller-left");
        Assert.True(reason.Decides);
        Assert.Contains(reason.Groups[0].Beyond, s => s.Any(m => m.Name == "roller-left:worn"));
        Assert.DoesNotContain(reason.Groups[^1].Beyond, s => s.Any(m => m.Name == "roller-left:worn"));
        Assert.True(reason.Groups[0].Expected.Value > 3 * reason.Groups[^1].Expected.Value);
        Assert.Empty(reason.Suspects);
    }

    [Fact]
    public void Groups_lie_apart_and_go_down()
    {
        foreach (var next in Result.Next.Take(5))
        {
            var groups = Reasoning.Of(next).Groups;
            for (var a = 1; a < groups.Length; a++)
            {
                Assert.True(groups[a].Expected.Value <= groups[a - 1].Expected.Value);
                for (var b = 0; b < a; b++)
                    Assert.True(groups[a].Expected.IsApartFrom(groups[b].Expected), next.Spec.Id);
            }
        }
    }

    [Fact]
    public void A_reading_that_the_probable_faults_leave_alone_names_what_would_move_it()
    {
        var reason = Of("disc-left-1a");
        Assert.False(reason.Decides);
        Assert.Contains(reason.Suspects, m => m.Name == "disc-left:high-drop");
        var usual = reason.Groups[0].Expected;
        var spec = Reference.Twin160.FindReading("disc-left-1a")!;
        Assert.All(
            reason.Suspects,
            m =>
                Assert.NotEqual(
                    Side.Within,
                    usual.Judge(Prediction.Run(Model, [(spec, spec.State)], [new AssumedFault(m, m.MiddleSize)])[0].Value).Side
                )
        );
    }

    [Fact]
    public void What_others_wait_for_says_how_many()
    {
        foreach (var gate in Result.Next.SelectMany(n => n.BlockedBy).Distinct(StringComparer.Ordinal))
            Assert.Equal(Result.Next.Count(n => n.BlockedBy.Contains(gate)), Of(gate).Waiting);
        Assert.Equal(0, Of("drop-roller-left").Waiting);
        Assert.True(Of("insulation-core").Waiting > 5);
    }
}
