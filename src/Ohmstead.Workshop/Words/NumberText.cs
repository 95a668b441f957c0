using System.Globalization;
using System.Text.RegularExpressions;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Words;

/// <summary>
/// A number with prefix and unit as a person types it. A point is always a decimal point. A comma is one too, unless three
/// digits follow that might be thousands: then the person is asked, since a guess could be wrong a thousandfold.
/// </summary>
internal static partial class NumberText
{
    /// <summary>No meter shows as many signs; a unit and blanks included.</summary>
    private const int MostSigns = 60;

    /// <summary>Reads a number in the quantity's unit, in whatever digits it was typed.</summary>
    public static TypedNumber Read(string text, Quantity quantity)
    {
        var (typed, unclear) = Clear(text);
        if (unclear.Length > 0)
            return Refused(unclear);
        var parts = Form().Match(typed);
        if (!parts.Success)
            return Refused($"“{text}” is not a number. Try 18.6, 0.3k or OL.");
        if (WrongUnit(parts.Groups["unit"].Value, quantity) is { } wrong)
            return Refused(wrong);
        var inner = parts.Groups["inner"];
        var digits =
            parts.Groups["whole"].Value
            + (inner.Success ? "." + parts.Groups["rest"].Value : parts.Groups["decimals"].Value.Replace(',', '.'));
        var prefix = inner.Success ? inner.Value : parts.Groups["prefix"].Value;
        if (prefix is "m" && quantity == Quantity.InsulationOhms)
            return Refused("A small m is a thousandth. For megohms write a capital M: 200M.");
        if (prefix is "M" or "G" && quantity is not (Quantity.Ohms or Quantity.InsulationOhms))
            return Refused("A capital M is a million. For a thousandth write a small m: 200m.");
        // The digits were matched above; only a number too long for a double is left, and that is no reading.
        var value =
            double.Parse(digits, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture)
            * By(IsBareMegohms(parts, quantity) ? "M" : prefix);
        if (Math.Abs(value) > 1e12)
            return Refused($"\"{text}\" is more than any meter shows.");
        if (value < 0 && quantity is not (Quantity.DcVolts or Quantity.Ohms))
            return Refused("This cannot be less than nothing. Leave the minus sign out.");
        return new TypedNumber(value, "");
    }

    /// <summary>Reads a number without prefix and unit, of a setting or a count, by the same rule for point and comma.</summary>
    public static TypedNumber Plain(string text)
    {
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        var (typed, unclear) = Clear(text);
        if (unclear.Length > 0)
            return Refused(unclear);
        return double.TryParse(typed.Replace(',', '.'), style, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? new TypedNumber(value, "")
            : Refused($"“{Short(text)}” is not a number.");
    }

    /// <summary>A text as it is repeated to who typed it.</summary>
    public static string Short(string text) => text.Length <= 20 ? text : text[..20] + "…";

    /// <summary>What was typed, in plain digits, or why nobody can say which number it is.</summary>
    private static (string Typed, string Unclear) Clear(string text)
    {
        if (text.Length > MostSigns)
            return ("", "That is too long for a number.");
        var typed = PlainDigits.Of(text).Trim().Replace('\u2212', '-');
        if (Mixed().IsMatch(typed))
            return ("", $"\"{text}\" has separators for thousands: write the number without them.");
        if (Thousands().IsMatch(typed))
            return ("", $"\"{text}\" could be {typed.Replace(',', '.')} or {typed.Replace(",", "")}: write it without a comma.");
        return (typed, "");
    }

    /// <summary>A tester of insulation shows megohms, so that is what its bare number says.</summary>
    private static bool IsBareMegohms(Match parts, Quantity quantity) =>
        quantity == Quantity.InsulationOhms
        && !parts.Groups["inner"].Success
        && parts.Groups["prefix"].Length + parts.Groups["unit"].Length == 0;

    private static double By(string prefix) =>
        prefix switch
        {
            "m" => 1e-3,
            "k" or "K" => 1e3,
            "M" => 1e6,
            "G" => 1e9,
            "µ" or "μ" or "u" => 1e-6,
            _ => 1,
        };

    private static string? WrongUnit(string unit, Quantity quantity)
    {
        if (unit.Length == 0)
            return null;
        var expected = ValueText.LetterOf(quantity);
        var given = unit.ToLowerInvariant() switch
        {
            "v" or "volt" or "volts" => "V",
            "a" or "amp" or "amps" => "A",
            "w" or "watt" or "watts" => "W",
            _ => "Ω",
        };
        return given == expected ? null : $"This reading is in {expected}, not in {given}.";
    }

    private static TypedNumber Refused(string problem) => new(0, problem);

    // One to three digits, a comma, three digits: 1,234 but not 0,123. A prefix or unit after it makes it no clearer.
    [GeneratedRegex(@"^[-+]?[1-9][0-9]{0,2},[0-9]{3}(?![0-9.,])", RegexOptions.CultureInvariant)]
    private static partial Regex Thousands();

    [GeneratedRegex(@"[0-9][.,' \u00a0\u202f][0-9]+[.,' \u00a0\u202f][0-9]|[0-9][' \u00a0\u202f][0-9]", RegexOptions.CultureInvariant)]
    private static partial Regex Mixed();

    // 4k7: the prefix (or R for ohms) stands where the point would be. Otherwise digits, prefix, unit.
    [GeneratedRegex(
        @"^(?=[-+]?[.,Rr]?[0-9])(?<whole>[-+]?[0-9]{0,13})((?<inner>[kKMGRr])(?<rest>[0-9]{1,6})|(?<decimals>[.,][0-9]{0,12})?\s*(?<prefix>[kKMGmµμu])?)\s*(?<unit>[vV]|[aA]|[wW]|volts?|amps?|watts?|[Ω\u2126]|[oO]hms?)?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture
    )]
    private static partial Regex Form();
}

/// <summary>A number that was typed, or why it is none.</summary>
internal sealed record TypedNumber(double Value, string Problem);
