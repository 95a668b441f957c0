using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>A slip that the diagnosis found, as a question with what to do; one tap corrects what arithmetic alone can.</summary>
public class SlipWordsTests
{
    private static SlipWords Of(string id, double read, SlipKind kind, string? with = null, double? meant = null)
    {
        var bench = new OnTheBench().Read(id, read);
        return SlipWords.Of(OnTheBench.Sheet, bench.Readings, new ProbableSlip(id, kind, with, meant, 0.9))!;
    }

    [Theory]
    [InlineData(35, SlipKind.TimesTen, "Ten times too high? 35 Ω where 3.5 Ω belongs.", 3.5)]
    [InlineData(0.35, SlipKind.Tenth, "Ten times too low? 0.35 Ω where 3.5 Ω belongs.", 3.5)]
    [InlineData(3500, SlipKind.TimesThousand, "A thousand times too high? 3.5 kΩ where 3.5 Ω belongs.", 3.5)]
    [InlineData(0.0035, SlipKind.Thousandth, "A thousand times too low? 0.0035 Ω where 3.5 Ω belongs.", 3.5)]
    [InlineData(-3.5, SlipKind.Sign, "Red and black lead swapped? -3.5 Ω where 3.5 Ω belongs.", 3.5)]
    public void A_point_a_prefix_or_a_sign_is_corrected_to_the_digit(double read, SlipKind kind, string headline, double meant)
    {
        var slip = Of("ohms-left", read, kind, meant: 3.47);
        Assert.Equal(headline, slip.Headline);
        Assert.Equal(meant, slip.Correction!.Meant.Value);
    }

    [Theory]
    [InlineData(SlipKind.Exchanged, "volts-5", "Swapped with ", "Read both again.")]
    [InlineData(SlipKind.Quantity, null, "DC noted as AC? 12.5 V where 17 V belongs.", "Check AC or DC on the meter, then read it again.")]
    [InlineData(SlipKind.Place, "U..5", "Read between ", "Check where the leads go, then read it again.")]
    [InlineData(
        SlipKind.Control,
        null,
        "A control not at its setting? 12.5 V where 17 V belongs.",
        "Check every control, then read it again."
    )]
    [InlineData(SlipKind.Unknown, null, "It does not fit the rest. 12.5 V where 17 V belongs.", "Read it again.")]
    public void What_only_another_look_settles_has_no_correction(SlipKind kind, string? with, string headline, string act)
    {
        var slip = Of("left-full", 12.5, kind, with, 17.04);
        Assert.StartsWith(headline, slip.Headline, StringComparison.Ordinal);
        Assert.Equal(act, slip.Do);
        Assert.Null(slip.Correction);
    }

    /// <summary>Mains is not unlocked from memory.</summary>
    [Fact]
    public void A_check_is_read_again_and_never_corrected_by_one_tap() => Assert.Null(Of("blades", 39, SlipKind.TimesTen).Correction);

    [Fact]
    public void In_the_middle_of_a_sentence_it_is_brief() =>
        Assert.Equal(
            ["possible slip, ten times too high", "possible slip, a thousand times too low", "possible slip, DC noted as AC"],
            new[] { SlipKind.TimesTen, SlipKind.Thousandth, SlipKind.Quantity }.Select(k =>
                SlipWords.Brief(OnTheBench.Sheet, OnTheBench.Sheet.FindReading("left-full")!, new("left-full", k, null, null, 0.9))
            )
        );

    [Theory]
    [InlineData(0.9, true)]
    [InlineData(0.89, false)]
    public void It_is_asked_about_at_once_from_nine_in_ten_on(double probability, bool isSure)
    {
        var bench = new OnTheBench().Read("ohms-left", 35);
        var slip = new ProbableSlip("ohms-left", SlipKind.TimesTen, null, 3.5, probability);
        Assert.Equal(isSure, SlipWords.Of(OnTheBench.Sheet, bench.Readings, slip)!.IsSure);
    }
}
