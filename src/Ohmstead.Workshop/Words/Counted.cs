using System.Globalization;

namespace Ohmstead.Workshop.Words;

/// <summary>A number of things, in words: the one place where a noun is put behind a count.</summary>
public static class Counted
{
    /// <summary>"no photos", "1 photo", "3 photos".</summary>
    public static string Of(long count, string one, string? many = null) =>
        count switch
        {
            0 => $"no {Many(one, many)}",
            1 => $"1 {one}",
            _ => $"{Figure(count)} {Many(one, many)}",
        };

    /// <summary>"none", "1", "3": where the noun stands beside it.</summary>
    public static string Bare(long count) => count == 0 ? "none" : Figure(count);

    /// <summary>"0 of 7 readings", "1 of 1 reading".</summary>
    public static string Share(long done, long all, string one, string? many = null) =>
        $"{Figure(done)} of {Figure(all)} {(all == 1 ? one : Many(one, many))}";

    /// <summary>"All 15 checks", "The one check"; "No checks" of none.</summary>
    public static string All(long count, string one, string? many = null) =>
        count switch
        {
            0 => $"No {Many(one, many)}",
            1 => $"The one {one}",
            _ => $"All {Figure(count)} {Many(one, many)}",
        };

    /// <summary>"under 1 min", "3 min": nothing takes 0 minutes.</summary>
    public static string Minutes(double minutes) =>
        minutes < 0.95 ? "under 1 min" : $"{Math.Round(minutes, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture)} min";

    private static string Many(string one, string? many) => many ?? one + "s";

    private static string Figure(long count) => count.ToString(CultureInfo.InvariantCulture);
}
