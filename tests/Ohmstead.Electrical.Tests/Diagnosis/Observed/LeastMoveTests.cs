using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>A fault that moves a reading by less than three thousandths of the meter's limit moves it not at all.</summary>
public class LeastMoveTests
{
    private const double Rest = 10;

    /// <summary>Shorted is a hundredth of an ohm; before it were so many limits at ten ohms more.</summary>
    [Theory]
    [InlineData(0.0025, false)]
    [InlineData(0.0035, true)]
    [InlineData(0.0055, true)]
    public void From_three_thousandths_of_a_limit_on_a_reading_is_moved(double limits, bool isMoved)
    {
        var error = Meter.Usual.For(Quantity.Ohms);
        var draft = new SheetDraft();
        foreach (
            var (id, from, to, ohms, shorted) in new[]
            {
                ("small", "a", "b", 0.01 + (limits * error.LimitAt(Rest)), 5),
                ("rest", "b", "c", Rest, 0),
            }
        )
            draft = draft.Resistor(id, from, to, ohms, ("shorted", shorted));
        var unit = draft.Reading("both", "ohms", ["a", "c"]).Unit();
        var pieces = new Pieces(unit, [WireBench.Value(unit, "both", Rest)]);
        Assert.Equal(isMoved, pieces.Classes.Any(c => c.Lead.Name == "small:shorted"));
        Assert.Equal(!isMoved, pieces.Still.Any(m => m.Name == "small:shorted"));
        var curve = pieces.Rows[0].Curves[unit.Catalogue.Find("small:shorted")!.Number];
        Assert.Equal(isMoved, curve is not null);
        if (isMoved)
            Assert.Equal(-limits, Assert.Single(curve!), 0.01 * limits);
    }
}
