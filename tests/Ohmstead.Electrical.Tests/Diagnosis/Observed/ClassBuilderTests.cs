using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>Faults that do the same to every reading taken are one class; with sixteen or fewer each stays by itself.</summary>
public class ClassBuilderTests
{
    /// <summary>Nine wires and a joint in a row read as one, two resistors that drift each by its own ohms, and a wire that is not read.</summary>
    private static Pieces Row(bool isTold, double open = 1)
    {
        var draft = WireBench.Parts([
            .. Enumerable
                .Range(0, 9)
                .Select(n =>
                    (
                        FormattableString.Invariant($"w{n}"),
                        FormattableString.Invariant($"n{n}"),
                        FormattableString.Invariant($"n{n + 1}"),
                        n == 4 ? open : 1
                    )
                ),
            ("aside", "x", "y", 1.0),
        ]);
        var drifts = new Dictionary<string, double>
        {
            ["open"] = 0,
            ["shorted"] = 0,
            ["drifted"] = 5,
        };
        var unit = draft
            .Element("joint", "contact", "n9", "n10", new { ohms = 0.01 })
            .Element("resistor", "ten", "n10", "n11", new { ohms = 10, faults = drifts })
            .Element("resistor", "twenty", "n11", "n12", new { ohms = 20, faults = drifts })
            .Reading("row", "ohms", ["n0", "n12"])
            .Observation("spark", new() { ["w3:open"] = 0.5, ["aside:open"] = 0.4 }, 0.1)
            .Unit();
        Symptom[] told = isTold ? [new(unit.Model.Sheet.Observations[0], true)] : [];
        return new Pieces(unit, [WireBench.Value(unit, "row", 30.2)], symptoms: told);
    }

    private static string[] Names(IEnumerable<FaultClass> classes) =>
        [.. classes.Select(c => string.Join(' ', c.Modes.Select(m => m.Name).Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal)];

    private static string Wires(string mode, params int[] but) =>
        string.Join(' ', Enumerable.Range(0, 9).Except(but).Select(n => FormattableString.Invariant($"w{n}:{mode}")));

    [Fact]
    public void Breaks_are_one_class_and_poor_contacts_another_and_each_drift_is_its_own()
    {
        var pieces = Row(isTold: false);
        Assert.Equal(
            ["contact:open " + Wires("open"), "contact:resistive " + Wires("resistive"), "ten:drifted", "twenty:drifted"],
            Names(pieces.Classes)
        );
        Assert.Equal(["aside:open", "aside:resistive"], pieces.Still.Select(m => m.Name).Order(StringComparer.Ordinal));
        Assert.Equal(Enumerable.Range(0, 4), pieces.Classes.Select(c => c.Number));
        var poor = pieces.Class("w0:resistive");
        // The joint is the likelier one (3 %): it leads.
        Assert.Equal((0.4, 30.0, "contact:resistive"), (poor.Min, poor.Max, poor.Lead.Name));
        Assert.Equal(Math.Log((9 * (0.01 / 0.99)) + (0.03 / 0.97)), poor.LogOdds, 1e-9);
        // Its curve is that of its own range.
        var set = new Members([poor], [0]);
        foreach (var (share, k) in poor.PointShares.Select((s, k) => (s, k)))
            Assert.Equal(pieces.Predict(set.At(0, share))[0] - pieces.Sound[0], poor.Curve[k][0], 1e-6);
        Assert.Equal([true], poor.Moves);
    }

    [Fact]
    public void What_a_symptom_speaks_of_stands_by_itself_even_where_no_reading_is_moved()
    {
        var pieces = Row(isTold: true);
        Assert.Equal(
            [
                "aside:open",
                "contact:open " + Wires("open", 3),
                "contact:resistive " + Wires("resistive"),
                "ten:drifted",
                "twenty:drifted",
                "w3:open",
            ],
            Names(pieces.Classes)
        );
        Assert.Equal([false], pieces.Class("aside:open").Moves);
        Assert.DoesNotContain(pieces.Still, m => m.Name == "aside:open");
    }

    [Fact]
    public void What_has_no_chance_is_in_no_class()
    {
        var pieces = Row(isTold: false, open: 0);
        Assert.Contains("contact:open " + Wires("open", 4), Names(pieces.Classes));
        Assert.DoesNotContain(pieces.Still, m => m.Name == "w4:open");
    }

    [Fact]
    public void Of_sixteen_faults_none_are_merged()
    {
        var unit = WireBench.Chain(8);
        var pieces = new Pieces(unit, [WireBench.Value(unit, "whole", 0.08)]);
        Assert.Equal(16, pieces.Classes.Length);
        Assert.All(pieces.Classes, c => Assert.Single(c.Modes));
        var longer = WireBench.Chain(9);
        Assert.Equal(2, new Pieces(longer, [WireBench.Value(longer, "whole", 0.09)]).Classes.Length);
    }
}
