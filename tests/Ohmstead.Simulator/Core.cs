using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>A core, seen from its reference winding of ReferenceTurns turns.</summary>
internal sealed record Core(string Id, double ReferenceTurns, double LossOhms, double? Henries, (double Volts, double Amps)[] Curve)
{
    public static Core Read(JsonObject sheet, JsonObject core) =>
        new(
            core.Word("id"),
            sheet.ById("elements", core.Word("referenceWinding")).Number("turns"),
            core.Number("lossOhms"),
            core["magnetisingHenries"]?.GetValue<double>(),
            core["excitation"] is JsonArray curve
                ? [.. curve.Select(point => (point![0]!.GetValue<double>(), point[1]!.GetValue<double>()))]
                : []
        );

    /// <summary>Magnetising amperes per volt at an induced voltage, both RMS.</summary>
    public double Susceptance(double volts, double omega)
    {
        if (Henries is { } henries)
            return 1 / (omega * henries);
        double at = Math.Max(volts, 1e-6 * Curve[^1].Volts);
        int last = 1;
        while (last < Curve.Length - 1 && Curve[last].Volts < at)
            last++;
        (double v0, double i0) = Curve[last - 1];
        (double v1, double i1) = Curve[last];
        return (i0 + (i1 - i0) * (at - v0) / (v1 - v0)) / at;
    }
}
