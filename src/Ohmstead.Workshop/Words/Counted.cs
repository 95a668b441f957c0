using System.Globalization;

namespace Ohmstead.Workshop.Words;

/// <summary>A number of things.</summary>
public static class Counted
{
    /// <summary>"no photos", "1 photo", "3 photos".</summary>
    public static string Of(int count, string one, string? many = null) =>
        count switch
        {
            0 => $"no {many ?? one + "s"}",
            1 => $"1 {one}",
            _ => $"{count.ToString(CultureInfo.InvariantCulture)} {many ?? one + "s"}",
        };
}
