using System.Globalization;

namespace Ohmstead.Workshop.Words;

/// <summary>Digits of any script as 0 to 9: what a keyboard set to another language sends.</summary>
internal static class PlainDigits
{
    /// <summary>The text with every decimal digit, and the signs that go with them, as plain ones; all else as it is.</summary>
    public static string Of(string text)
    {
        var plain = new System.Text.StringBuilder(text.Length);
        for (var n = 0; n < text.Length; n += char.IsSurrogatePair(text, n) ? 2 : 1)
            if (CharUnicodeInfo.GetDecimalDigitValue(text, n) is >= 0 and var digit)
                plain.Append((char)('0' + digit));
            else if (char.IsSurrogatePair(text, n))
                plain.Append(text, n, 2);
            else
                plain.Append(Sign(text[n]));
        return plain.ToString();
    }

    private static char Sign(char sign) =>
        sign switch
        {
            // Arabic decimal sign, full-width point and comma, Arabic comma for thousands, full-width minus and plus.
            '\u066b' or '\uff0e' => '.',
            '\u066c' or '\uff0c' or '\u060c' => ',',
            '\uff0d' => '-',
            '\uff0b' => '+',
            _ => sign,
        };
}
