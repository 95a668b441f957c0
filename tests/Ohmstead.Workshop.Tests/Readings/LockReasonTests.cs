using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>Why a reading is locked: what to do first comes first, in a sentence each.</summary>
public class LockReasonTests
{
    private static readonly Shop Looking = OnTheBench.Shop with { LookOver = UsualShop.Make().LookOver };

    private static ReadingOffer Full(OnTheBench bench) =>
        ReadingOffer.All(bench.Unit, bench.Model, bench.Readings, Looking).Single(o => o.Spec.Id == "left-full");

    [Fact]
    public void A_reading_that_is_open_has_no_reason() => Assert.Empty(new OnTheBench().Offer("blades").Locks);

    [Fact]
    public void The_look_over_comes_first_then_the_wiring_check_then_the_checks_in_their_order()
    {
        var offer = Full(new OnTheBench()) with { WaitsForCheck = true };
        var reasons = offer.Locks;
        Assert.Equal(offer.Endangering.Length + 1 + offer.Shut.Length, reasons.Length);
        Assert.NotEmpty(offer.Endangering);
        Assert.Equal(
            [.. offer.Endangering.Select(_ => LockPlace.LookOver), LockPlace.WiringCheck, .. offer.Shut.Select(_ => LockPlace.Reading)],
            reasons.Select(r => r.Place)
        );
        Assert.Equal(offer.Endangering[0].Item.Id, reasons[0].About);
        Assert.Equal(offer.Shut[0].Gate.Id, reasons[offer.Endangering.Length + 1].About);
    }

    [Fact]
    public void Each_says_what_is_so_and_what_to_do()
    {
        var offer = Full(new OnTheBench());
        var danger = offer.Locks.First(r => r.Place == LockPlace.LookOver);
        Assert.EndsWith(": not looked at", danger.What, StringComparison.Ordinal);
        Assert.Equal("Look at it, or sign for it.", danger.Act);
        var check = offer.Locks.First(r => r.Place == LockPlace.Reading);
        Assert.Equal(
            ("Between the plug blades: not taken yet", "Take it first.", "Take: between the plug blades"),
            (check.What, check.Act, check.Button)
        );
    }

    /// <summary>A check that was measured is read again, not taken; one too close to its limit says with what.</summary>
    [Fact]
    public void A_check_that_was_measured_is_read_again()
    {
        var bench = new OnTheBench().Read("blades", 1e6);
        var check = Full(bench).Locks.First(r => r.About == "blades");
        Assert.StartsWith("Read again: ", check.Button, StringComparison.Ordinal);
        Assert.Contains("failed", check.What, StringComparison.Ordinal);
        Assert.Equal("A measured failure cannot be waived.", check.Act);
    }

    [Fact]
    public void In_one_line_the_first_is_said_and_how_many_more()
    {
        LockReason[] two = [.. Full(new OnTheBench()).Locks.Take(2)];
        Assert.Equal($"{two[0].What}. {two[0].Act} And 1 more.", LockReason.Briefly([.. two]));
        Assert.Equal($"{two[0].What}. {two[0].Act}", LockReason.Briefly([two[0]]));
    }
}
