using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Tests.Journal;

public sealed class ShownTextTests
{
    [Theory]
    [InlineData("18.6", 18.6)]
    [InlineData("18,6", 18.6)]
    [InlineData(" 18.6 V ", 18.6)]
    [InlineData("18.6volts", 18.6)]
    [InlineData(".5", 0.5)]
    [InlineData(",5", 0.5)]
    [InlineData("5.", 5)]
    [InlineData("0", 0)]
    [InlineData("0,123", 0.123)]
    [InlineData("1.234", 1.234)]
    [InlineData("1,2345", 1.2345)]
    [InlineData("1234", 1234)]
    [InlineData("1234,5", 1234.5)]
    [InlineData("380m", 0.38)]
    [InlineData("380 mV", 0.38)]
    public void Volts_are_read(string text, double volts) => Same(volts, text, Quantity.AcVolts);

    [Theory]
    [InlineData("0.3k", 300)]
    [InlineData("0,3 k", 300)]
    [InlineData("4k7", 4700)]
    [InlineData("4K7", 4700)]
    [InlineData("2M2", 2.2e6)]
    [InlineData("4R7", 4.7)]
    [InlineData("R47", 0.47)]
    [InlineData("4.7kΩ", 4700)]
    [InlineData("4.7 kohm", 4700)]
    [InlineData("470 m", 0.47)]
    [InlineData("200M", 200e6)]
    [InlineData("1.2G", 1.2e9)]
    [InlineData("-0.02", -0.02)]
    [InlineData("−0.02", -0.02)]
    public void Ohms_are_read(string text, double ohms) => Same(ohms, text, Quantity.Ohms);

    [Theory]
    [InlineData("OL")]
    [InlineData("ol")]
    [InlineData("0L")]
    [InlineData("O.L")]
    [InlineData("open")]
    public void Over_range_is_read(string text) => Assert.Equal(ShownKind.OverRange, ShownText.Read(text, Quantity.Ohms).Shown!.Kind);

    [Theory]
    [InlineData("1,234", "1.234", "1234")]
    [InlineData("12,345 V", "12.345", "12345")]
    [InlineData("1,234.5", "thousands", "without")]
    [InlineData("1.234,5", "thousands", "without")]
    [InlineData("1 234", "thousands", "without")]
    [InlineData("1'234", "thousands", "without")]
    [InlineData("1.2.3", "thousands", "without")]
    public void Separators_of_thousands_are_asked_about(string text, string one, string other)
    {
        var typed = ShownText.Read(text, Quantity.AcVolts);
        Assert.Null(typed.Shown);
        Assert.Contains(one, typed.Problem, StringComparison.Ordinal);
        Assert.Contains(other, typed.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", Quantity.AcVolts, "Type")]
    [InlineData("abc", Quantity.AcVolts, "not a number")]
    [InlineData("NaN", Quantity.AcVolts, "not a number")]
    [InlineData("1e3", Quantity.AcVolts, "not a number")]
    [InlineData("<script>", Quantity.AcVolts, "not a number")]
    [InlineData("k", Quantity.Ohms, "not a number")]
    [InlineData("-", Quantity.Ohms, "not a number")]
    [InlineData("99999999999999999999", Quantity.Ohms, "not a number")]
    [InlineData("9999999999999", Quantity.Ohms, "more than any meter")]
    [InlineData("-18.6", Quantity.AcVolts, "less than nothing")]
    [InlineData("-3", Quantity.Watts, "less than nothing")]
    [InlineData("18.6 ohm", Quantity.AcVolts, "in V, not in Ω")]
    [InlineData("3 W", Quantity.AcAmps, "in A, not in W")]
    [InlineData("200m", Quantity.InsulationOhms, "capital M")]
    [InlineData("3M", Quantity.AcVolts, "small m")]
    [InlineData("could not", Quantity.AcVolts, "why")]
    [InlineData("jumps 3", Quantity.Ohms, "two values")]
    public void What_cannot_be_told_is_asked_in_words(string text, Quantity quantity, string words)
    {
        var typed = ShownText.Read(text, quantity);
        Assert.Null(typed.Shown);
        Assert.Contains(words, typed.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_jump_has_two_ends_or_none()
    {
        Assert.Empty(ShownText.Read("it jumps", Quantity.Ohms).Shown!.Between);
        double?[] ends = [.. ShownText.Read("jumps 3,1 to OL", Quantity.Ohms).Shown!.Between];
        Assert.Equal([3.1, null], ends);
    }

    [Fact]
    public void Why_it_could_not_be_taken_is_kept()
    {
        var shown = ShownText.Read("Could not, because: the clip is lost", Quantity.Ohms).Shown!;
        Assert.Equal((ShownKind.NotTaken, "the clip is lost"), (shown.Kind, shown.Why));
    }

    [Theory]
    [InlineData("18.6", Quantity.AcVolts, "18.6 V")]
    [InlineData("4k7", Quantity.Ohms, "4.7 kΩ")]
    [InlineData("286M", Quantity.InsulationOhms, "286 MΩ")]
    [InlineData("ol", Quantity.Ohms, "OL")]
    [InlineData("jumps 3.1 and OL", Quantity.Ohms, "jumps, 3.1 Ω to OL")]
    [InlineData("0.26", Quantity.AcAmps, "0.26 A")]
    public void It_is_written_with_its_unit(string text, Quantity quantity, string written) =>
        Assert.Equal(written, ShownText.Write(ShownText.Read(text, quantity).Shown!, quantity));

    [Fact]
    public void The_culture_of_the_machine_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            (CultureInfo.CurrentCulture.NumberFormat.NumberDecimalSeparator, CultureInfo.CurrentCulture.NumberFormat.NumberGroupSeparator) =
                (",", ".");
            Same(18.6, "18.6", Quantity.AcVolts);
            Same(18.6, "18,6", Quantity.AcVolts);
            Assert.Equal("18.6 V", ShownText.Write(Shown.Number(18.6), Quantity.AcVolts));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static void Same(double expected, string text, Quantity quantity)
    {
        var typed = ShownText.Read(text, quantity);
        Assert.Equal("", typed.Problem);
        Assert.Equal(ShownKind.Value, typed.Shown!.Kind);
        Assert.Equal(expected, typed.Shown.Value, Math.Abs(expected) * 1e-12 + 1e-15);
    }

    [Theory]
    [InlineData("\u0663\u066b\u0665", 3.5)]
    [InlineData("\u06f1\u06f8\u066b\u06f6 V", 18.6)]
    [InlineData("\uff11\uff18\uff0e\uff16", 18.6)]
    [InlineData("\u0967\u0968", 12)]
    public void Digits_of_any_script_are_read_as_digits(string text, double volts) => Same(volts, text, Quantity.AcVolts);

    /// <summary>Letters, digits of many scripts, signs, lone halves of pairs: whatever a keyboard may send.</summary>
    [Fact]
    public void No_text_whatever_ends_in_an_error()
    {
        var chance = new Random(7);
        string[] pieces =
        [
            "1",
            "0",
            "\u0663",
            "\u06f5",
            "\uff17",
            "\u0967",
            "\ud835\udfce",
            "\ud835",
            "\udfce",
            "\u00b2",
            "\u2460",
            "\u066b",
            "\u066c",
            "\uff0e",
            ".",
            ",",
            "-",
            "\u2212",
            "+",
            " ",
            "\u00a0",
            "\u202f",
            "\u200f",
            "k",
            "M",
            "m",
            "G",
            "R",
            "\u00b5",
            "\u03a9",
            "\u2126",
            "V",
            "ohm",
            "OL",
            "jumps ",
            " to ",
            "could not, ",
            "'",
            "\0",
            "\n",
            "\ud83d\ude00",
            "e",
            "\u221e",
            "NaN",
            "9999999999999999",
        ];
        foreach (var quantity in Enum.GetValues<Quantity>())
            for (var n = 0; n < 4000; n++)
            {
                var text = string.Concat(Enumerable.Range(0, chance.Next(1, 9)).Select(_ => pieces[chance.Next(pieces.Length)]));
                if (chance.Next(50) == 0)
                    text = string.Concat(Enumerable.Repeat(text, 200));
                var typed = ShownText.Read(text, quantity);
                Assert.Equal(typed.Shown is null, typed.Problem.Length > 0);
                Assert.True(typed.Shown is null || double.IsFinite(typed.Shown.Value), text);
            }
    }
}
