using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>A value ten times off, or below nothing, is asked about; what can be a fault as it stands is not.</summary>
public class SlipTests
{
    private static readonly Expectation Blades = new(Quantity.Ohms, 3.45, 3.1, 3.8);
    private static readonly Expectation Post = new(Quantity.AcVolts, 19.3, 19, 19.6);
    private static readonly Expectation Disc = new(Quantity.DcVolts, 6.4, 6, 6.9);
    private static readonly Expectation Insulation = new(Quantity.InsulationOhms, 280e6, 91e6, 710e6);

    private static (string, double)? Of(double typed, Expectation band) =>
        Slip.Of(Shown.Number(typed), band) is { } slip ? (slip.Words, slip.Meant.Value) : null;

    [Fact]
    public void Thirty_five_where_three_and_a_half_belongs_is_asked_about()
    {
        Assert.Equal(("ten times too high", 3.5), Of(35, Blades));
        Assert.Equal("Did you mean 3.5 Ω?", Slip.Of(Shown.Number(35), Blades)!.Question(Quantity.Ohms));
        Assert.Equal(("ten times too high", 19.2), Of(192, Post));
        Assert.Equal(("ten times too low", 19.2), Of(1.92, Post));
        Assert.Equal(("a hundred times too low", 3.5), Of(0.035, Blades));
        Assert.Equal(("a thousand times too high", 3.5), Of(3500, Blades));
    }

    /// <summary>No fault multiplies the volts of a post: 148 V there is 14.8, which is low and no slip by itself.</summary>
    [Fact]
    public void Volts_that_no_fault_can_give_are_asked_about_even_where_the_meant_ones_are_off()
    {
        Assert.Equal(("ten times too high", 14.8), Of(148, Post));
        Assert.Equal(("a hundred times too high", 14.8), Of(1480, Post));
        Assert.Null(Of(38, Post));
        Assert.Null(Of(148, Post with { Quantity = Quantity.Watts }));
        Assert.Null(Of(12.5, new Expectation(Quantity.Ohms, 3.45, 3.1, 3.8)));
    }

    [Fact]
    public void A_minus_sign_is_asked_about()
    {
        Assert.Equal(("minus sign", 3), Of(-3, Blades));
        Assert.Equal(("minus sign", 6.2), Of(-6.2, Disc));
    }

    [Fact]
    public void What_is_near_or_can_be_a_fault_is_taken_as_typed()
    {
        Assert.Null(Of(3.5, Blades));
        Assert.Null(Of(3.9, Blades));
        Assert.Null(Of(12, Blades));
        Assert.Null(Of(14.8, Post));
        Assert.Null(Of(-2, Disc));
        Assert.Null(Slip.Of(Shown.OverRange, Blades));
        Assert.Null(Slip.Of(Shown.NotTaken("no clip"), Blades));
        Assert.Null(Slip.Of(Shown.Number(40e3), new(Quantity.Ohms, double.PositiveInfinity, 20e6, double.PositiveInfinity)));
        Assert.Null(Slip.Of(Shown.Number(192), Post with { CanJudge = false }));
    }

    /// <summary>28 MΩ is damp and 280 kΩ a failure: neither is led to a pass by one key.</summary>
    [Fact]
    public void Where_a_band_spans_a_decade_nothing_is_asked()
    {
        Assert.Null(Of(28e6, Insulation));
        Assert.Null(Of(280e3, Insulation));
    }
}
