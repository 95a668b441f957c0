using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>The test leads are asked for once of a meter, before its first low-ohm reading.</summary>
public class TestLeadsTests
{
    private static readonly Expectation Low = new(Quantity.Ohms, 0.3, 0.2, 0.4);

    [Fact]
    public void A_meter_whose_leads_were_never_read_is_asked_before_low_ohms_only()
    {
        Assert.Equal("hand", TestLeads.ToAsk(Low, BenchState.AsSheet, OnTheBench.Shop)!.Id);
        Assert.Null(TestLeads.ToAsk(Low with { Value = 300, Low = 280, High = 320 }, BenchState.AsSheet, OnTheBench.Shop));
        Assert.Null(TestLeads.ToAsk(Low with { Quantity = Quantity.AcVolts }, BenchState.AsSheet, OnTheBench.Shop));
    }

    [Fact]
    public void Once_answered_it_is_kept_with_the_meter_and_not_asked_again()
    {
        var known = TestLeads.Known(OnTheBench.Shop, "hand", 0.35);
        Assert.Equal(0.35, MeterInHand.Of(BenchState.AsSheet, known).For(Quantity.Ohms).LeadOhms);
        Assert.Null(TestLeads.ToAsk(Low, BenchState.AsSheet, known));
        var skipped = TestLeads.Known(OnTheBench.Shop, "hand", null);
        Assert.Equal(0.2, MeterInHand.Of(BenchState.AsSheet, skipped).For(Quantity.Ohms).LeadOhms);
        Assert.Null(TestLeads.ToAsk(Low, BenchState.AsSheet, skipped));
    }

    [Theory]
    [InlineData("0.3", 0.3, true)]
    [InlineData("300m", 0.3, true)]
    [InlineData("0", 0, true)]
    [InlineData("-0.1", 0, false)]
    [InlineData("30", 0, false)]
    [InlineData("OL", 0, false)]
    [InlineData("two", 0, false)]
    public void What_no_leads_read_is_refused(string text, double ohms, bool isRight)
    {
        var (read, problem) = TestLeads.Read(text);
        Assert.Equal((ohms, isRight), (read, problem.Length == 0));
    }
}
