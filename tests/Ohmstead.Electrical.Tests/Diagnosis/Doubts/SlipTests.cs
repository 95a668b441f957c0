using Ohmstead.Electrical.Diagnosis;
using static Ohmstead.Electrical.Tests.Diagnosis.Doubts.SlipBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>One reading of a sound unit that was noted or taken wrongly: it is named, said how, and speaks for no fault.</summary>
public class SlipTests
{
    [Theory]
    [InlineData("volts-17", 10, SlipKind.TimesTen)]
    [InlineData("ohms-left", 10, SlipKind.TimesTen)]
    [InlineData("left-full", 0.1, SlipKind.Tenth)]
    [InlineData("amps-idle", 1000, SlipKind.TimesThousand)]
    [InlineData("blades", 0.001, SlipKind.Thousandth)]
    [InlineData("left-second-dc", -1, SlipKind.Sign)]
    public void A_point_a_prefix_or_a_sign_is_told_with_what_was_meant(string id, double times, SlipKind kind)
    {
        var right = Twin.ReadListed(id);
        var slip = Assert.Single(Run((id, right * times)).Slips);
        Assert.Equal((id, kind), (slip.Id, slip.Kind));
        Assert.Equal(right, slip.Meant!.Value, 1e-6);
        Assert.True(slip.Probability > 0.95);
    }

    [Fact]
    public void What_fits_no_way_of_going_wrong_is_said_to_be_unknown()
    {
        var slip = Assert.Single(Run(("watts-idle", Twin.ReadListed("watts-idle") * 3.7)).Slips);
        Assert.Equal(("watts-idle", SlipKind.Unknown, (double?)null), (slip.Id, slip.Kind, slip.Meant));
    }
}
