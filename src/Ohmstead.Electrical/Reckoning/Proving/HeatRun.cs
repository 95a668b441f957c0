using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary><c>heat-run</c>: where a winding's rise is going, from its ohms during the run and after it (docs/methods/proving.md).</summary>
/// <param name="Metal">Of the winding.</param>
/// <param name="Cold">Winding and room before it was first switched on.</param>
/// <param name="RepeatPercent">One standard deviation of a reading of ohms; the meter's scale error is common to all and cancels.</param>
/// <param name="During">Readings in between, power off for each.</param>
/// <param name="After">Readings after the last switch-off.</param>
/// <param name="EndMinutes">The last switch-off.</param>
/// <param name="EndCelsius">The room then.</param>
/// <param name="LimitKelvin">The most rise.</param>
/// <param name="Times">What is known of such units beforehand.</param>
internal sealed record HeatRun(
    WindingMetal Metal,
    ColdWinding Cold,
    double RepeatPercent,
    ImmutableArray<HeatReading> During,
    ImmutableArray<CoolingReading> After,
    double EndMinutes,
    double EndCelsius,
    double LimitKelvin,
    HeatTimes Times
) : Question
{
    /// <summary>A run of more than a week is a slip.</summary>
    private static readonly NumberRange Minutes = new(0, 10_080, WithoutLow: true);
    private static readonly NumberRange Seconds = new(0, 36_000);

    /// <summary>Reads its fields.</summary>
    public static HeatRun Read(QuestionFields fields)
    {
        var (metal, cold, repeat) = (
            WindingMetal.Read(fields),
            ColdWinding.Read(fields),
            fields.Number("repeatPercent", new NumberRange(0, 100, WithoutLow: true))
        );
        var before = 0.0;
        var during = fields.List(
            "during",
            d =>
            {
                var reading = new HeatReading(
                    d.Number("minutes", Minutes),
                    d.Number("secondsAfter", Seconds),
                    d.Number("ohms", NumberRange.Positive),
                    d.Number("ambientCelsius", NumberRange.Celsius)
                );
                if (d.IsSoundAt("minutes") && reading.Minutes <= before)
                    d.Report("minutes", "is not after the one before", "minutes since it was first switched on, rising");
                before = reading.Minutes;
                return reading;
            },
            least: 3,
            most: 300
        );
        var after = fields.OptionalList(
            "after",
            a => new CoolingReading(a.Number("seconds", Seconds), a.Number("ohms", NumberRange.Positive)),
            most: 300
        );
        var end = fields.Number("endMinutes", Minutes);
        if (fields.IsSoundAt("endMinutes") && fields.IsSoundAt("during") && during.Length > 0 && end < during.Max(d => d.Minutes))
            fields.Report("endMinutes", "is before the last reading", "minutes of the last switch-off");
        return new(
            metal,
            cold,
            repeat,
            during,
            after,
            end,
            fields.Number("endCelsius", NumberRange.Celsius),
            fields.Number("limitKelvin", NumberRange.Positive),
            HeatTimes.Read(fields)
        );
    }

    /// <inheritdoc/>
    public override HeatRunAnswer Answer()
    {
        var run = HeatForecast.Of(this);
        var (low, middle, high) = (run.Final.At(0.05), run.Final.At(0.5), run.Final.At(0.95));
        var stop =
            high < LimitKelvin ? "below"
            : low > LimitKelvin ? "above"
            : "go on";
        return new(
            new(run.AtOff.At(0.5), run.AtOff.At(0.05), run.AtOff.At(0.95)),
            new(middle, low, high),
            100 * run.Final.Above(LimitKelvin),
            stop
        )
        {
            Words = HeatRunWords.Of(stop, middle, low, high, EndMinutes, run.IsOneCurve),
            Cautions = HeatRunWords.Cautions,
            Outside = HeatRunWords.Outside,
        };
    }
}

/// <summary>A reading in the run.</summary>
/// <param name="Minutes">Clock time since it was first switched on, at the moment of switching off.</param>
/// <param name="SecondsAfter">The switch-off.</param>
/// <param name="Ohms">Of the winding.</param>
/// <param name="AmbientCelsius">Of the room.</param>
internal sealed record HeatReading(double Minutes, double SecondsAfter, double Ohms, double AmbientCelsius);

/// <summary>A reading after the last switch-off.</summary>
internal sealed record CoolingReading(double Seconds, double Ohms);

/// <summary>What <c>heat-run</c> answers.</summary>
/// <param name="AtOff">The winding over the room at the last switch-off.</param>
/// <param name="Final">The rise after hours of the same load, over the last room temperature.</param>
/// <param name="ChanceAbovePercent">That the final rise is above the limit.</param>
/// <param name="MayStop">below, above, or go on.</param>
public sealed record HeatRunAnswer(RiseBand AtOff, RiseBand Final, double ChanceAbovePercent, string MayStop) : Answer;

/// <summary>A rise and the band that holds it in 90 of 100.</summary>
public sealed record RiseBand(double RiseKelvin, double LowKelvin, double HighKelvin);
