using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>The faults of docs/formats.md, read from its table again.</summary>
internal static class FaultCatalogue
{
    private static readonly Dictionary<string, FaultMode[]> Modes = new(StringComparer.Ordinal)
    {
        ["wire"] = [new("open", 0.5), new("resistive", 1.5, (0.4, 30))],
        ["joint"] = [new("open", 0.5), new("resistive", 3, (0.4, 30))],
        ["winding"] = [new("open", 1), new("shorted-turns", 1.5, (0.01, 0.06)), new("reversed", 0.5)],
        ["slider"] = [new("worn", 25, (0.6, 15)), new("open", 4)],
        ["breaker"] = [new("resistive", 10, (0.3, 5)), new("open", 3), new("bypassed", 4)],
        ["rectifier"] = [new("high-drop", 30, (1, 8)), new("leaky", 20, (2, 15)), new("shorted", 6), new("open", 8), new("reversed", 2)],
        ["resistor"] = [new("open", 6), new("shorted", 2), new("drifted", 4, (0.4, 2.5))],
        ["capacitor"] = [new("open", 4), new("leaky", 8, (1e3, 1e6)), new("shorted", 3)],
        ["lamp"] = [new("open", 10)],
        ["switch"] = [new("resistive", 12, (0.5, 20)), new("stuck-open", 4), new("stuck-closed", 3)],
        ["insulation"] = [new("low", 5, (5e3, 1e6))],
    };

    /// <summary>Every element and slider with its modes, the sheet's own percents in place.</summary>
    public static IEnumerable<(JsonObject Element, FaultMode[] Modes)> Of(JsonObject sheet)
    {
        foreach (JsonObject element in sheet.Objects("elements"))
        {
            yield return (element, Own(element, element.Word("kind")));
            foreach (JsonObject slider in element.Objects("sliders"))
                yield return (slider, Own(slider, "slider"));
        }
        foreach (JsonObject shared in sheet.Objects("sharedFaults"))
        {
            JsonObject first = sheet.ById("elements", shared["elements"].Words().First());
            FaultMode mode = Modes[first.Word("kind")].Single(m => m.Name == shared.Word("mode"));
            yield return (shared, [mode with { Percent = shared.Number("percent") }]);
        }
    }

    /// <summary>The size of a fault, or null for a mode that has none.</summary>
    public static double? Size(Dice dice, JsonObject element, FaultMode mode)
    {
        if (mode.Size is not { } size)
            return null;
        if (mode.Name != "shorted-turns")
            return dice.LogBetween(size.Low, size.High);
        double turns = element.Number("turns");
        double least = Math.Max(1, Math.Ceiling(size.Low * turns));
        double most = Math.Max(least, Math.Floor(size.High * turns));
        double drawn = dice.LogBetween(Math.Max(1, size.Low * turns), Math.Max(1, size.High * turns));
        return Math.Clamp(Math.Round(drawn), least, most);
    }

    private static FaultMode[] Own(JsonObject element, string kind) =>
        [
            .. Modes[kind]
                .Select(mode =>
                    element["faults"] is JsonObject own && own[mode.Name] is { } percent
                        ? mode with
                        {
                            Percent = percent.GetValue<double>(),
                        }
                        : mode
                ),
        ];
}
