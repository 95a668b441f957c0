using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>The source of a reading: alternating volts behind a resistance or a lamp, or a direct current.</summary>
internal sealed record Supply(
    string From,
    string To,
    double Volts,
    double SeriesOhms,
    (double Volts, double Amps)? SeriesLamp,
    double? DirectAmps
)
{
    public static Supply? Read(JsonObject? source) =>
        source is null
            ? null
            : new Supply(
                source.Word("from"),
                source.Word("to"),
                source.Number("volts", 0),
                source.Number("seriesOhms", 0),
                source["seriesLamp"] is JsonObject lamp ? (lamp.Number("volts"), lamp.Number("amps")) : null,
                source["directAmps"]?.GetValue<double>()
            );
}
