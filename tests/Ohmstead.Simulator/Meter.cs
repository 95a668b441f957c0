using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>The meter of the twelve cases: a rectangular error within percent and floor, and its digits.</summary>
internal static class Meter
{
    private static readonly Dictionary<string, (double Percent, double Floor)> Limits = new(StringComparer.Ordinal)
    {
        ["ohms"] = (0.8, 0.05),
        ["insulation-ohms"] = (5, 20000),
        ["ac-volts"] = (0.8, 0.03),
        ["dc-volts"] = (0.5, 0.02),
        ["ac-amps"] = (1.5, 0.01),
        ["watts"] = (1.5, 0.4),
    };

    public static JsonObject Describe()
    {
        JsonObject meter = [];
        foreach ((string quantity, (double percent, double floor)) in Limits)
            meter[quantity] = new JsonObject { ["percent"] = percent, ["floor"] = floor };
        return meter;
    }

    public static JsonNode Read(Dice dice, string quantity, JsonNode value)
    {
        double error = dice.Between(-1, 1);
        if (value.GetValueKind() == System.Text.Json.JsonValueKind.String)
            return value.DeepClone();
        double number = value.GetValue<double>();
        (double percent, double floor) = Limits[quantity];
        double shown = number + error * (percent / 100 * Math.Abs(number) + floor);
        if (quantity != "dc-volts")
            shown = Math.Max(0, shown);
        return JsonValue.Create(Shown(quantity, shown));
    }

    private static double Shown(string quantity, double value) =>
        quantity switch
        {
            "insulation-ohms" => value < 1e6 ? 1e4 * Math.Round(value / 1e4) : 1e3 * Math.Round(value / 1e3),
            "ac-amps" => Math.Round(value, 3),
            "watts" => Math.Round(value, 1),
            "ohms" when value >= 1000 => Dice.Tidy(value, 6),
            _ => Math.Round(value, 2),
        };
}
