using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Words;

/// <summary>What faults are called at the bench: a fault word, the part, and which one if there are several.</summary>
internal static class FaultNames
{
    /// <summary>"worn roller, track 1", "burnt breaker contact", "shorted turns, primary".</summary>
    /// <param name="title">What the part is called: "roller of track 1", "joint at the 14 V post".</param>
    public static string Of(ElementKind? kind, string mode, string title)
    {
        // "joint at the outer end of the boost winding" is one name.
        var (part, which) = kind == ElementKind.Joint ? (title, "") : Split(title);
        return (kind, mode) switch
        {
            (ElementKind.Wire, "resistive") when part.Contains("cord", StringComparison.Ordinal) => $"worn {part}{which}",
            (ElementKind.Winding, "shorted-turns") => $"shorted turns, {title}",
            (ElementKind.Slider, "open") => $"{part} not touching{which}",
            (ElementKind.Breaker, "resistive") => $"burnt {part} contact{which}",
            (ElementKind.Resistor, "drifted") => $"{part} off value{which}",
            (ElementKind.Switch, "stuck-open") => $"{part} not closing{which}",
            (ElementKind.Switch, "stuck-closed") => $"{part} stuck on{which}",
            _ => $"{Before(kind, mode)} {part}{which}",
        };
    }

    /// <summary>The fault where the part was named: "worn", "cold", "poor contact".</summary>
    public static string Alone(ElementKind? kind, string mode) =>
        (kind, mode) switch
        {
            (ElementKind.Wire, "resistive") => "loses volts under load",
            (ElementKind.Slider, "open") => "not touching",
            (ElementKind.Breaker, "resistive") => "burnt contact",
            (ElementKind.Resistor, "drifted") => "off value",
            (ElementKind.Switch, "resistive") => "poor contact",
            (ElementKind.Switch, "stuck-open") => "not closing",
            (ElementKind.Switch, "stuck-closed") => "stuck on",
            (ElementKind.Winding, "shorted-turns") => "shorted turns",
            _ => Before(kind, mode),
        };

    private static string Before(ElementKind? kind, string mode) =>
        (kind, mode) switch
        {
            (ElementKind.Wire, "open") => "broken",
            (ElementKind.Wire, "resistive") => "poor",
            (ElementKind.Joint, "open") => "loose",
            (ElementKind.Joint, "resistive") => "cold",
            (ElementKind.Switch, "resistive") => "dirty",
            (ElementKind.Lamp, "open") => "dead",
            (ElementKind.Rectifier, "high-drop") => "weak",
            (ElementKind.Insulation, "low") => "weak",
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
