using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

/// <summary>Findings on the way stand in the order of the likeliest fault of each, as they will in the answer.</summary>
public class SoFarTests
{
    /// <summary>
    /// Five ohms more in a row of nine wires, of which the first is poor far more often than the others; and a wire by itself, a little high,
    /// which is poor or not. As one finding the nine are nearly certain; the first of them is likelier than the wire, each other is not.
    /// </summary>
    [Theory]
    [InlineData(40, "w0 aside")]
    [InlineData(1, "aside w0")]
    public void The_likeliest_fault_of_each_decides(double firstPercent, string order)
    {
        var draft = new SheetDraft();
        for (var n = 0; n < 9; n++)
            draft = Wire(
                draft,
                FormattableString.Invariant($"w{n}"),
                FormattableString.Invariant($"n{n}"),
                FormattableString.Invariant($"n{n + 1}"),
                n == 0 ? firstPercent : 1
            );
        var unit = Wire(draft, "aside", "x", "y", 50).Reading("row", "ohms", ["n0", "n9"]).Reading("alone", "ohms", ["x", "y"]).Unit();
        // A meter that is good to half an ohm leaves it open whether the wire is poor.
        var meter = new Meter(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(0.8, 0.6, 0, 0)));
        var pieces = new Pieces(unit, [WireBench.Value(unit, "row", 5), WireBench.Value(unit, "alone", 0.35)], meter: meter);
        var search = pieces.Searched();
        var so = SoFar.Of(search, pieces.Classes);
        var marginals = new Marginals([search], pieces.Classes);
        Assert.Equal(search.Expanded, so.SetsExpanded);
        var poor = so.Findings.Where(f => f.Modes[0].Mode == "resistive").ToArray();
        Assert.Equal(order, string.Join(' ', poor.Select(f => f.Modes[0].Element)));
        Assert.All(poor, f => Assert.Equal(marginals.ByClass[pieces.Class(f.Modes[0].Name).Number], f.Probability, 1e-12));
        Assert.True(poor.Single(f => f.Modes.Length == 9).Probability > poor.Single(f => f.Modes.Length == 1).Probability);
    }

    private static SheetDraft Wire(SheetDraft draft, string id, string a, string b, double percent) =>
        draft.Element(
            "wire",
            id,
            a,
            b,
            new { ohms = 0.01, faults = new Dictionary<string, double> { ["open"] = 1, ["resistive"] = percent } }
        );
}
