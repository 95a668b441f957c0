using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Draws a sound unit: every numeric parameter times its own log-normal factor.</summary>
internal static class Spread
{
    private static readonly Dictionary<string, (string Field, double Relative, double? Default)[]> Usual = new(StringComparer.Ordinal)
    {
        ["winding"] = [("ohms", 0.08, null), ("leakageHenries", 0.2, 0)],
        ["wire"] = [("ohms", 0.25, 0.004)],
        ["joint"] = [("ohms", 0.25, 0.002)],
        ["breaker"] = [("ohms", 0.25, null)],
        ["resistor"] = [("ohms", 0.08, null)],
        ["rectifier"] = [("saturationAmps", 0.5, null), ("seriesOhms", 0.3, null), ("leakageOhms", 0.5, null)],
        ["insulation"] = [("ohms", 0.7, null)],
        ["capacitor"] = [("farads", 0.2, null)],
        ["lamp"] = [],
        ["switch"] = [],
    };

    public static JsonObject Draw(Dice dice, JsonObject sheet)
    {
        JsonObject unit = sheet.Copy();
        foreach (JsonObject core in unit.Objects("cores"))
            Magnetise(dice, core);
        foreach (JsonObject element in unit.Objects("elements"))
        {
            foreach ((string field, double relative, double? otherwise) in Usual[element.Word("kind")])
            {
                double nominal = otherwise is { } value ? element.Number(field, value) : element.Number(field);
                element[field] = nominal * Factor(dice, element, field, relative);
            }
            if (element.Word("kind") == "winding")
                Wind(dice, element);
        }
        return unit;
    }

    private static void Magnetise(Dice dice, JsonObject core)
    {
        core["lossOhms"] = core.Number("lossOhms") * Factor(dice, core, "lossOhms", 0.10);
        if (core["magnetisingHenries"] is not null)
        {
            core["magnetisingHenries"] = core.Number("magnetisingHenries") * Factor(dice, core, "magnetisingHenries", 0.12);
            return;
        }
        double factor = Factor(dice, core, "excitation", 0.12);
        foreach (JsonNode? point in core["excitation"]!.AsArray())
            point![1] = point[1]!.GetValue<double>() * factor;
    }

    /// <summary>One factor for the turns, the taps and the sliders of a winding.</summary>
    private static void Wind(Dice dice, JsonObject winding)
    {
        double factor = Factor(dice, winding, "turns", 0.006);
        winding["turns"] = winding.Number("turns") * factor;
        foreach (JsonObject tap in winding.Objects("taps"))
            tap["turn"] = tap.Number("turn") * factor;
        foreach (JsonObject slider in winding.Objects("sliders"))
        {
            slider["fromTurn"] = slider.Number("fromTurn") * factor;
            slider["toTurn"] = slider.Number("toTurn") * factor;
            slider["contactOhms"] = slider.Number("contactOhms") * Factor(dice, slider, "contactOhms", 0.4);
        }
    }

    private static double Factor(Dice dice, JsonObject at, string field, double usual) =>
        dice.Factor((at["spread"] as JsonObject)?.Number(field, usual) ?? usual);
}
