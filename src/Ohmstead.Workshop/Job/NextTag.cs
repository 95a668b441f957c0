using System.Globalization;

namespace Ohmstead.Workshop.Job;

/// <summary>What to write on the tag of the next unit.</summary>
public static class NextTag
{
    /// <summary>The highest number on a tag, plus one, written as that tag is; "1" for the first unit.</summary>
    public static string After(IEnumerable<string> tags)
    {
        var (best, prefix, width) = (0L, "", 1);
        foreach (var tag in tags)
        {
            var digits = tag.Length;
            while (digits > 0 && char.IsAsciiDigit(tag[digits - 1]))
                digits--;
            var isNumber = long.TryParse(tag[digits..], NumberStyles.None, CultureInfo.InvariantCulture, out var number);
            if (isNumber && number > best && number < long.MaxValue)
                (best, prefix, width) = (number, tag[..digits], tag.Length - digits);
        }
        return prefix + (best + 1).ToString(CultureInfo.InvariantCulture).PadLeft(width, '0');
    }
}
