using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>A resistance wire: its own ohms against what it should have, and how long a new one is (<see cref="ResistanceWire"/>).</summary>
public sealed record WireMeasure(ImmutableArray<MeasureField> Fields, double SoundOhms) : PartMeasure(Fields)
{
    /// <summary>A wire within this share of its ohms stays. Common practice, no source.</summary>
    private const double MostOff = 0.10;

    /// <summary>Within this share it is watched. Common practice, no source.</summary>
    private const double WatchOff = 0.07;

    internal static WireMeasure Of(Resistive resistor) =>
        new(
            [
                new("ohms", "Its ohms, end to end", "Ω, leads taken off", 0, 1e6, "") { IsOptional = true },
                new("diameter", "New wire, diameter", "mm", 0.05, 5, "0.64"),
                new("alloy", "New wire, alloy", "Ω for 1 m of 1 mm²", 0.01, 5, "1.09"),
                new("amps", "Amps through it", "A", 0, 50, "3"),
                new("duty", "Called so often", "% of the time", 0, 100, "20"),
            ],
            resistor.Ohms
        );

    /// <inheritdoc/>
    protected override MeasureVerdict Answer()
    {
        var answer = new ResistanceWire(
            Number("diameter"),
            Number("alloy"),
            SoundOhms,
            null,
            Number("amps"),
            0,
            20,
            Number("duty")
        ).Answer();
        var sound = ValueText.Of(SoundOhms, Quantity.Ohms);
        var read = Optional("ohms");
        var off = read is { } ohms ? Math.Abs((ohms / SoundOhms) - 1) : (double?)null;
        return From(
            answer,
            off is null ? DecidedAct.Open
                : off > MostOff ? DecidedAct.Replace
                : off > WatchOff ? DecidedAct.Watch
                : DecidedAct.Leave,
            read is { } typed ? $"{ValueText.Of(typed, Quantity.Ohms)}, should be {sound}" : $"not read, should be {sound}",
            ("a new one", $"{ValueText.Plain(Math.Round(answer.Metres * 100, 1))} cm for {sound}"),
            ("heat", $"{ValueText.Of(answer.Watts, Quantity.Watts)} on average"),
            ("of its surface", $"{ValueText.Plain(Math.Round(answer.WattsPerSquareCentimetre, 2))} W for each cm²")
        );
    }
}
