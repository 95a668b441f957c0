using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Words;

/// <summary>What no line ends within; <c>_</c> stands for the space that holds.</summary>
public class UnbrokenTests
{
    [Theory]
    [InlineData("Post 0 to post 2, full throttle: 1.5 Ω", "Post_0 to post_2, full throttle: 1.5_Ω")]
    [InlineData("12 V AC on post A, 5 Ω load, step 2", "12_V_AC on post_A, 5_Ω load, step_2")]
    [InlineData("82.4–661 MΩ at 500 V", "82.4–661_MΩ at 500_V")]
    [InlineData("16 min, 4.00 USD, 50 %, 20 °C, 60 Hz, 18 AWG, 3 mm, 15 mJ", "16_min, 4.00_USD, 50_%, 20_°C, 60_Hz, 18_AWG, 3_mm, 15_mJ")]
    [InlineData("Reading 7 of 12: take the 14 V post. A wire was moved.", "Reading_7 of 12: take the 14_V post. A wire was moved.")]
    [InlineData("8 steps, 5 Volunteers, step on it, track Alder", "8 steps, 5 Volunteers, step on it, track Alder")]
    public void A_number_keeps_its_unit_and_a_post_its_number(string words, string held) =>
        Assert.Equal(held, Unbroken.Of(words).Replace(Unbroken.Space, '_'));
}
