using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>
/// <c>rise-elsewhere</c>: one final rise taken to other loads and rooms. Rise goes with watts, and copper loss grows with
/// temperature (docs/methods/proving.md).
/// </summary>
/// <param name="NoLoadWatts">P0, taken as constant.</param>
/// <param name="LoadWattsAt20">Copper loss at the test amps with windings at 20 °C.</param>
/// <param name="TestAmps">Load of the test.</param>
/// <param name="TestCelsius">Room of the test.</param>
/// <param name="FinalRiseKelvin">What it came to.</param>
/// <param name="LimitKelvin">The most.</param>
/// <param name="At">Where to take it.</param>
/// <param name="MostAmpsCelsius">Room for which the most amps are asked.</param>
internal sealed record RiseElsewhere(
    double NoLoadWatts,
    double LoadWattsAt20,
    double TestAmps,
    double TestCelsius,
    double FinalRiseKelvin,
    double LimitKelvin,
    ImmutableArray<LoadAndRoom> At,
    double MostAmpsCelsius
) : Question
{
    private const double Copper = 234.5;
    private const double At20 = Copper + 20;

    /// <summary>A standard test is made at so many times the rated input, the circuit as it was (EN 61558-1, 14.2, key iec-61558).</summary>
    public const double RaisedInput = 1.06;

    /// <summary>The line of the test and that of the plate; null where they were not given.</summary>
    private (double Test, double Rated)? Line { get; init; }

    /// <summary>Reads its fields.</summary>
    public static RiseElsewhere Read(QuestionFields fields) =>
        new(
            fields.Number("noLoadWatts", NumberRange.NotNegative),
            fields.Number("loadWattsAt20", NumberRange.Positive),
            fields.Number("testAmps", NumberRange.Positive),
            fields.Number("testCelsius", NumberRange.Celsius),
            fields.Number("finalRiseKelvin", NumberRange.Positive),
            fields.Number("limitKelvin", NumberRange.Positive),
            fields.OptionalList(
                "at",
                a => new LoadAndRoom(a.Number("amps", NumberRange.NotNegative), a.Number("ambientCelsius", NumberRange.Celsius))
            ),
            fields.Number("mostAmpsCelsius", NumberRange.Celsius, 25)
        )
        {
            Line =
                fields.Has("testVolts") || fields.Has("ratedVolts")
                    ? (fields.Number("testVolts", NumberRange.Positive), fields.Number("ratedVolts", NumberRange.Positive))
                    : null,
        };

    /// <inheritdoc/>
    public override RiseElsewhereAnswer Answer()
    {
        var perWatt = FinalRiseKelvin / (NoLoadWatts + (LoadWattsAt20 * (Copper + TestCelsius + FinalRiseKelvin) / At20));
        var most = ((LimitKelvin / perWatt) - NoLoadWatts) * At20 / (Copper + MostAmpsCelsius + LimitKelvin);
        var amps = most > 0 ? TestAmps * Math.Sqrt(most / LoadWattsAt20) : 0;
        var raised = Line is { } line ? Raised(perWatt, line.Test, line.Rated) : null;
        return new(perWatt, [.. At.Select(a => new RiseAt(a.Amps, a.AmbientCelsius, RiseOf(a, perWatt)))], amps)
        {
            AtRaisedInput = raised,
            Words =
            [
                FormattableString.Invariant(
                    $"At {MostAmpsCelsius:0.#} °C in the room it stays within {LimitKelvin:0.#} °C of rise up to {amps:0.0} A for hours."
                ),
                .. raised is { } r ? [Said(r, LimitKelvin)] : ImmutableArray<string>.Empty,
            ],
            Outside =
            [
                "No-load watts are taken as constant, cooling as proportional to the rise, and the loss as shared between the windings as in the test.",
                TestRecord.NoCertification,
            ],
        };
    }

    /// <summary>The same load on a raised line: amps go with volts, and the core’s watts with their square (common practice, no source).</summary>
    private RaisedRise Raised(double perWatt, double testVolts, double ratedVolts)
    {
        var volts = RaisedInput * ratedVolts;
        var times = volts / testVolts;
        var loss = LoadWattsAt20 * times * times;
        var left = 1 - (perWatt * loss / At20);
        var watts = (NoLoadWatts * times * times) + (loss * (Copper + TestCelsius) / At20);
        return new(volts, TestAmps * times, left > 0 ? perWatt * watts / left : null);
    }

    private static string Said(RaisedRise raised, double limit) =>
        raised.RiseKelvin is { } kelvin
            ? FormattableString.Invariant(
                $"A standard test raises the line to {raised.Volts:0.#} V, 6 % over the plate (EN 61558-1, 14.2). There this load would rise {kelvin:0} °C: {(kelvin <= limit * (1 + 1e-9) ? "within" : "over")} the limit of {limit:0.#} °C."
            )
            : FormattableString.Invariant($"At {raised.Volts:0.#} V, 6 % over the plate, this load would run away.");

    /// <summary>R(P0 + j(234.5 + ta)/254.5)/(1 − Rj/254.5); null where the loss grows faster than it is carried off.</summary>
    private double? RiseOf(LoadAndRoom at, double perWatt)
    {
        var loss = LoadWattsAt20 * at.Amps * at.Amps / (TestAmps * TestAmps);
        var left = 1 - (perWatt * loss / At20);
        return left > 0 ? perWatt * (NoLoadWatts + (loss * (Copper + at.AmbientCelsius) / At20)) / left : null;
    }
}

/// <summary>A load in a room.</summary>
internal sealed record LoadAndRoom(double Amps, double AmbientCelsius);

/// <summary>What <c>rise-elsewhere</c> answers.</summary>
/// <param name="KelvinPerWatt">Of all that heats it.</param>
/// <param name="At">At each load and room.</param>
/// <param name="MostAmps">For hours within the limit; 0 where even no load is too much.</param>
public sealed record RiseElsewhereAnswer(double KelvinPerWatt, ImmutableArray<RiseAt> At, double MostAmps) : Answer
{
    /// <summary>At 1.06 times the rated input; left out where the line was not given.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public RaisedRise? AtRaisedInput { get; init; }
}

/// <summary>The load of the test on a raised line.</summary>
/// <param name="Volts">Of the line.</param>
/// <param name="Amps">Of the load then.</param>
/// <param name="RiseKelvin">In the room of the test; null where it would run away.</param>
public sealed record RaisedRise(double Volts, double Amps, double? RiseKelvin);

/// <summary>A load in a room, and its rise; null where it would run away.</summary>
public sealed record RiseAt(double Amps, double AmbientCelsius, double? RiseKelvin);
