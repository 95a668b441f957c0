namespace Ohmstead.Workshop.Words;

/// <summary>What faults are called at the bench: a fault word, the part, and which one if there are several.</summary>
internal static class FaultNames
{
    /// <summary>"worn roller, track 1", "burnt breaker contact", "shorted turns, primary".</summary>
    /// <param name="title">What the part is called: "roller of track 1", "joint at the 14 V post".</param>
    public static string Of(string kind, string mode, string title)
    {
        // "joint at the outer end of the boost winding" is one name.
        var (part, which) = kind == "joint" ? (title, "") : Split(title);
        return (kind, mode) switch
        {
            ("wire", "resistive") when part.Contains("cord", StringComparison.Ordinal) => $"worn {part}{which}",
            ("winding", "shorted-turns") => $"shorted turns, {title}",
            ("slider", "open") => $"{part} not touching{which}",
            ("breaker", "resistive") => $"burnt {part} contact{which}",
            ("resistor", "drifted") => $"{part} off value{which}",
            ("switch", "stuck-open") => $"{part} not closing{which}",
            ("switch", "stuck-closed") => $"{part} stuck on{which}",
            _ => $"{Before(kind, mode)} {part}{which}",
        };
    }

    /// <summary>The fault where the part was named: "worn", "cold", "poor contact".</summary>
    public static string Alone(string kind, string mode) =>
        (kind, mode) switch
        {
            ("wire", "resistive") => "loses volts under load",
            ("slider", "open") => "not touching",
            ("breaker", "resistive") => "burnt contact",
            ("resistor", "drifted") => "off value",
            ("switch", "resistive") => "poor contact",
            ("switch", "stuck-open") => "not closing",
            ("switch", "stuck-closed") => "stuck on",
            ("winding", "shorted-turns") => "shorted turns",
            _ => Before(kind, mode),
        };

    private static string Before(string kind, string mode) =>
        (kind, mode) switch
        {
            ("wire", "open") => "broken",
            ("wire", "resistive") => "poor",
            ("joint", "open") => "loose",
            ("joint", "resistive") => "cold",
            ("switch", "resistive") => "dirty",
            ("lamp", "open") => "dead",
            ("rectifier", "high-drop") => "weak",
            ("insulation", "low") => "weak",
            _ => mode.Replace('-', ' '),
        };

    /// <summary>"roller of track 1" is the roller, track 1.</summary>
    private static (string Part, string Which) Split(string title)
    {
        var (of, comma) = (title.IndexOf(" of ", StringComparison.Ordinal), title.IndexOf(", ", StringComparison.Ordinal));
        if (comma >= 0 && (of < 0 || comma < of))
            return (title[..comma], title[comma..]);
        if (of < 0)
            return (title, "");
        var which = title[(of + 4)..];
        return (title[..of], $", {(which.StartsWith("the ", StringComparison.Ordinal) ? which[4..] : which)}");
    }
}
