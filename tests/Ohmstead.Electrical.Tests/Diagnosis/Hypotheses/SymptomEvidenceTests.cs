using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Hypotheses;

/// <summary>What was told of a unit: causes that work side by side leave it out together (noisy or); by hand.</summary>
public class SymptomEvidenceTests
{
    private static readonly Observation Hum = new("hum", "It hums", [("a:resistive", 0.8), ("b:open", 0.5)], 0.1);

    private readonly FaultClass first = Class(0, "a", "resistive");
    private readonly FaultClass second = Class(1, "b", "open");
    private readonly FaultClass other = Class(2, "c", "shorted");

    [Fact]
    public void Two_causes_leave_it_out_only_together()
    {
        var yes = new SymptomEvidence([new Symptom(Hum, true)], []);
        Assert.Equal(Math.Log(0.1), yes.LogLikelihood([]), 1e-12);
        Assert.Equal(Math.Log(0.1), yes.LogLikelihood([other]), 1e-12);
        Assert.Equal(Math.Log(0.8), yes.LogLikelihood([first]), 1e-12);
        Assert.Equal(Math.Log(1 - (0.2 * 0.5)), yes.LogLikelihood([first, second]), 1e-12);
        var no = new SymptomEvidence([new Symptom(Hum, false)], []);
        Assert.Equal(Math.Log(0.2 * 0.5), no.LogLikelihood([first, second]), 1e-12);
    }

    /// <summary>A reading jumps by itself in 1 of 200, by a contact in 3 of 10.</summary>
    [Fact]
    public void What_jumped_speaks_for_what_can_come_and_go_where_it_moves_that_reading()
    {
        var jumped = new SymptomEvidence([], [0]);
        Assert.Equal(Math.Log(0.005), jumped.LogLikelihood([other]), 1e-12);
        Assert.Equal(Math.Log(1 - (0.995 * 0.7)), jumped.LogLikelihood([first]), 1e-12);
        first.Moves = [false];
        Assert.Equal(Math.Log(0.005), jumped.LogLikelihood([first]), 1e-12);
    }

    [Fact]
    public void Modes_of_which_it_says_the_same_have_one_key()
    {
        var told = new SymptomEvidence([new Symptom(Hum, true)], [0]);
        Assert.NotEqual(told.KeyOf(first.Lead), told.KeyOf(other.Lead));
        Assert.Equal(told.KeyOf(other.Lead), told.KeyOf(Class(3, "d", "shorted").Lead));
        // A contact that can come and go is another thing than one that cannot, once something jumped.
        Assert.NotEqual(told.KeyOf(Class(3, "d", "open").Lead), told.KeyOf(other.Lead));
        var quiet = new SymptomEvidence([new Symptom(Hum, true)], []);
        Assert.Equal(quiet.KeyOf(Class(3, "d", "open").Lead), quiet.KeyOf(other.Lead));
    }

    /// <summary>What parts share acts as it does in each of them, unless something is said of it itself.</summary>
    [Fact]
    public void What_parts_share_causes_it_by_each_of_them()
    {
        FaultMode Shared(string id, params string[] parts) =>
            new(0, id, 0, ElementKind.Switch, new FaultSpec("resistive", FaultChange.SetsOhms, 1)) { SharedBy = [.. parts] };
        double Yes(FaultMode mode, Observation o) =>
            Math.Exp(
                new SymptomEvidence([new Symptom(o, true)], []).LogLikelihood([new FaultClass(0, [mode], [1], [0]) { Moves = [true] }])
            );
        var hum = new Observation("hum", "It hums", [("a:resistive", 0.8), ("b:resistive", 0.5), ("c:open", 0.9)], 0.1);
        Assert.Equal(1 - (0.2 * 0.5), Yes(Shared("damp", "a", "b", "c"), hum), 1e-12);
        Assert.Equal(0.8, Yes(Shared("damp", "a", "c"), hum), 1e-12);
        Assert.Equal(0.1, Yes(Shared("damp", "c", "d"), hum), 1e-12);
        Assert.Equal(0.3, Yes(Shared("damp", "a", "b"), hum with { Given = [.. hum.Given, ("damp:resistive", 0.3)] }), 1e-12);
    }

    private static FaultClass Class(int number, string element, string mode) =>
        new(0, [new FaultMode(0, element, number, ElementKind.Switch, new FaultSpec(mode, FaultChange.SetsOhms, 1))], [1], [0])
        {
            Moves = [true],
        };
}
