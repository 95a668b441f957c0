using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>The readings of a unit: id and value, "OL" where the meter shows that.</summary>
internal sealed class Predictor : IDisposable
{
    private readonly SpiceSession spice = new();

    /// <param name="unit">A sheet with its faults and its drawn values in place.</param>
    /// <param name="wanted">The readings to take, or null for all.</param>
    /// <param name="volts">What the source of a reading really gave, or null for the figure of the sheet.</param>
    public JsonObject Readings(JsonObject unit, Func<string, bool>? wanted = null, Func<JsonObject, double?>? volts = null)
    {
        JsonObject values = [];
        foreach (JsonObject reading in unit.Objects("readings"))
        {
            if (wanted is not null && !wanted(reading.Word("id")))
                continue;
            double? value;
            try
            {
                value = ReadingSolver.Value(spice, unit, Bench.Read(unit, reading, volts?.Invoke(reading)));
            }
            catch (SpiceFailure failure)
            {
                Console.Error.WriteLine($"{reading.Word("id")} left out: {failure.Message}");
                continue;
            }
            values[reading.Word("id")] = value is { } number ? JsonValue.Create(number) : JsonValue.Create("OL");
        }
        return values;
    }

    public void Dispose() => spice.Dispose();
}
