using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>Its test leads and its own error are asked for once of a meter, before its first low-ohm reading.</summary>
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
        var known = TestLeads.Known(OnTheBench.Shop, "hand", new MeterAnswer(0.35, 1.2, 0.1));
        var error = MeterInHand.Of(BenchState.AsSheet, known).For(Quantity.Ohms);
        Assert.Equal((0.35, 1.2, 0.1), (error.LeadOhms, error.Percent, error.Floor));
        Assert.Equal(0.8, MeterInHand.Of(BenchState.AsSheet, known).For(Quantity.AcVolts).Percent);
        Assert.Null(TestLeads.ToAsk(Low, BenchState.AsSheet, known));
        var skipped = TestLeads.Known(OnTheBench.Shop, "hand", null);
        Assert.Equal(0.2, MeterInHand.Of(BenchState.AsSheet, skipped).For(Quantity.Ohms).LeadOhms);
        Assert.Null(TestLeads.ToAsk(Low, BenchState.AsSheet, skipped));
    }

    /// <summary>What is left empty is as the shop has it: of this hand meter 0.2 Ω and ± (0.8 % + 0.05 Ω).</summary>
    [Theory]
    [InlineData("0.3", "", "", 0.3, 0.8, 0.05)]
    [InlineData("", "1,5", "", 0.2, 1.5, 0.05)]
    [InlineData("", "", "0.2", 0.2, 0.8, 0.2)]
    [InlineData("300m", "0", "0.3", 0.3, 0, 0.3)]
    [InlineData("", "", "", 0.2, 0.8, 0.05)]
    public void Each_of_the_three_may_be_left_empty(
        string leads,
        string percent,
        string fixedPart,
        double lead,
        double share,
        double ohms
    ) => Assert.Equal((new MeterAnswer(lead, share, ohms), ""), TestLeads.Read(OnTheBench.Shop.Meters[0], leads, percent, fixedPart));

    [Theory]
    [InlineData("30", "", "", "0 to 5 Ω")]
    [InlineData("", "much", "", "Percent: “much” is not a number")]
    [InlineData("", "51", "", "Percent: Must be 0 to 50.")]
    [InlineData("", "", "-1", "Fixed part: ")]
    [InlineData("", "0", "0", "cannot both be 0")]
    public void What_no_meter_has_is_refused_and_says_which(string leads, string percent, string fixedPart, string problem)
    {
        var (answer, wrong) = TestLeads.Read(OnTheBench.Shop.Meters[0], leads, percent, fixedPart);
        Assert.Null(answer);
        Assert.Contains(problem, wrong, StringComparison.Ordinal);
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
