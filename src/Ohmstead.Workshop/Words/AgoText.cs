using System.Globalization;

namespace Ohmstead.Workshop.Words;

/// <summary>How long ago something was, in words.</summary>
public static class AgoText
{
    /// <summary>"just now", "12 minutes ago", "yesterday", "6 days ago"; the date when it is longer than four weeks.</summary>
    /// <param name="zone">Days are counted by the calendar of this zone, from midnight to midnight.</param>
    public static string Of(DateTimeOffset at, DateTimeOffset now, TimeZoneInfo zone)
    {
        var (then, here) = (TimeZoneInfo.ConvertTime(at, zone), TimeZoneInfo.ConvertTime(now, zone));
        var (minutes, days) = ((int)(now - at).TotalMinutes, (here.Date - then.Date).Days);
        return minutes switch
        {
            < 1 => "just now",
            < 60 => $"{Counted.Of(minutes, "minute")} ago",
            _ when days == 0 => $"{Counted.Of(minutes / 60, "hour")} ago",
            _ when days == 1 => "yesterday",
            _ when days <= 28 => $"{Counted.Of(days, "day")} ago",
            _ => then.ToString("d MMM yyyy", CultureInfo.InvariantCulture),
        };
    }
}
