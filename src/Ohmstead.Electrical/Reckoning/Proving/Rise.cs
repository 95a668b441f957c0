namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>
/// <c>rise</c>: how much warmer than the room a winding has become, by its ohms: (R2 − R1)/R1·(k + t1) − (t2 − t1)
/// (key iec-61558, 14.2).
/// </summary>
/// <param name="Metal">Of the winding.</param>
/// <param name="Cold">Before.</param>
/// <param name="HotOhms">At the moment of switching off.</param>
/// <param name="EndCelsius">Of the room then.</param>
public sealed record Rise(WindingMetal Metal, ColdWinding Cold, double HotOhms, double EndCelsius) : Question
{
    /// <summary>More than this below the room no winding is: then something was read wrongly.</summary>
    private const double MostColderKelvin = 5;

    /// <summary>Reads its fields.</summary>
    public static Rise Read(QuestionFields fields)
    {
        var rise = new Rise(
            WindingMetal.Read(fields),
            ColdWinding.Read(fields),
            fields.Number("hotOhms", NumberRange.Positive),
            fields.Number("endCelsius", NumberRange.Celsius)
        );
        if (fields.IsSoundAt("cold") && rise.Kelvin < -MostColderKelvin)
            fields.Report(
                "hotOhms",
                FormattableString.Invariant($"makes the winding {-rise.Kelvin:0} °C colder than the room"),
                "read both again: the same winding, the same leads"
            );
        return rise;
    }

    private double Kelvin => ((HotOhms - Cold.Ohms) / Cold.Ohms * (Metal.K + Cold.Celsius)) - (EndCelsius - Cold.Celsius);

    /// <inheritdoc/>
    public override RiseAnswer Answer() =>
        new(Kelvin, EndCelsius + Kelvin)
        {
            Words =
            [
                FormattableString.Invariant(
                    $"The winding is {Kelvin:0.0} °C warmer than the room: {EndCelsius + Kelvin:0.0} °C on average."
                ),
            ],
            Outside =
            [
                "This is the average of the winding. Its hottest spot is warmer, often by 10 °C (common practice, no source).",
                TestRecord.NoCertification,
            ],
        };
}

/// <summary>What <c>rise</c> answers.</summary>
/// <param name="RiseKelvin">Over the room.</param>
/// <param name="WindingCelsius">On average.</param>
public sealed record RiseAnswer(double RiseKelvin, double WindingCelsius) : Answer;
