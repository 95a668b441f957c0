using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>
/// Published cases of reasoning about sets of faults (tests/Reference/published/diagnosis.json). A conflict is an observation
/// that is certain when any of its parts is wrong and impossible otherwise, so that the posterior is that of the textbook.
/// </summary>
public class PolyboxTests
{
    private static readonly string[] Parts = ["A1", "A2", "M1", "M2", "M3"];

    private static readonly string[][] Conflicts =
    [
        ["A1", "M1", "M2"],
        ["A1", "A2", "M1", "M3"],
    ];

    [Theory]
    [InlineData("10.4-0.01", 0.0003)]
    [InlineData("10.4-0.1", 0.002)]
    public void The_polybox_has_its_published_posterior(string id, double within)
    {
        var p = Published.Case("diagnosis", id);
        var result = Diagnose(p.Given("chance"));
        double SetOf(params string[] parts) =>
            result
                .Hypotheses.Where(h => h.Faults.Select(f => f.Element).Order(StringComparer.Ordinal).SequenceEqual(parts))
                .Sum(h => h.Probability);
        p.Agrees("single", SetOf("A1"), within);
        p.Agrees("single", SetOf("M1"), within);
        p.Agrees("double", SetOf("A2", "M2"), within);
        p.Agrees("double", SetOf("M2", "M3"), within);
        if (p.Expects("m2"))
            p.Agrees("m2", Marginal(result, "M2"), within);
        if (!p.Expects("a2"))
            return;
        p.Agrees("a2", Marginal(result, "A2"), within);
        p.Agrees("a2", Marginal(result, "M3"), within);
    }

    [Fact]
    public void The_most_probable_sets_of_the_polybox_are_its_minimal_diagnoses()
    {
        // At a chance of 0.01 the two single ones lead by far; {A1} or {M1} and one more fault are as probable as a minimal pair,
        // so of the rest it is asked only that no set misses a conflict.
        var sets = Diagnose(0.01).Hypotheses.Select(h => h.Faults.Select(f => f.Element).Order(StringComparer.Ordinal).ToArray()).ToArray();
        Assert.Equal(["A1", "M1"], sets.Take(2).Select(s => Assert.Single(s)).Order(StringComparer.Ordinal));
        Assert.All(sets.Take(4), s => Assert.All(Conflicts, c => Assert.NotEmpty(c.Intersect(s))));
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.1)]
    [InlineData(0.4)]
    public void Marginals_agree_with_all_32_subsets(double chance)
    {
        var weights = Enumerable
            .Range(0, 32)
            .Select(set =>
                Conflicts.All(c => c.Any(part => Holds(set, part)))
                    ? Parts.Aggregate(1.0, (w, part) => w * (Holds(set, part) ? chance : 1 - chance))
                    : 0
            )
            .ToArray();
        Assert.Equal(Published.Case("diagnosis", "10.2").Expected("diagnoses"), weights.Count(w => w > 0));
        var result = Diagnose(chance);
        foreach (var part in Parts)
            Assert.Equal(
                Enumerable.Range(0, 32).Where(set => Holds(set, part)).Sum(set => weights[set]) / weights.Sum(),
                Marginal(result, part),
                0.02
            );

        static bool Holds(int set, string part) => (set >> Array.IndexOf(Parts, part) & 1) == 1;
    }

    [Fact]
    public void A_rare_cause_stays_rare_after_a_common_sign()
    {
        var p = Published.Case("diagnosis", "10.7");
        // P(sign) = P(sign | cause)·P(cause) + P(sign | no cause)·(1 − P(cause)).
        var otherwise = (p.Given("sign") - (p.Given("signGivenCause") * p.Given("cause"))) / (1 - p.Given("cause"));
        var unit = Wires(["neck"], 100 * p.Given("cause"))
            .Observation("stiff", new() { ["neck:open"] = p.Given("signGivenCause") }, otherwise)
            .Unit();
        var result = Diagnoser.Run(unit.Model, Told(unit, ["stiff"], true), new DiagnosisOptions());
        p.Agrees("causeGivenSign", Marginal(result, "neck"), 0.00001);
        var no = Diagnoser.Run(unit.Model, Told(unit, ["stiff"], false), new DiagnosisOptions());
        Assert.Equal(p.Given("cause") * (1 - p.Given("signGivenCause")) / (1 - p.Given("sign")), Marginal(no, "neck"), 1e-8);
    }

    private static DiagnosisResult Diagnose(double chance)
    {
        var draft = Wires(Parts, 100 * chance);
        for (var n = 0; n < Conflicts.Length; n++)
            draft.Observation(
                FormattableString.Invariant($"o{n}"),
                Conflicts[n].ToDictionary(part => part + ":open", _ => 1.0, StringComparer.Ordinal),
                0
            );
        var unit = draft.Unit();
        return Diagnoser.Run(unit.Model, Told(unit, ["o0", "o1"], true), new DiagnosisOptions());
    }

    private static SheetDraft Wires(string[] ids, double percent)
    {
        var draft = new SheetDraft();
        foreach (var id in ids)
            draft.Element(
                "wire",
                id,
                id + "-from",
                id + "-to",
                new { ohms = 0.01, faults = new Dictionary<string, double> { ["open"] = percent, ["resistive"] = 0 } }
            );
        return draft;
    }

    private static UnitReadings Told(BenchUnit unit, string[] observations, bool yes) =>
        new(
            unit.Model.Sheet.Id,
            120,
            null,
            Meter.Usual,
            [],
            [.. observations.Select(id => new Symptom(unit.Model.Sheet.Observations.Single(o => o.Id == id), yes))]
        );

    private static double Marginal(DiagnosisResult result, string part) =>
        result.Faults.Single(f => f.Mode.Name == part + ":open").Probability;
}
