using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Ohmstead.Electrical.Reckoning.Standards;

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

    /// <summary>Carried back to the moment of switching off; null where it was read there.</summary>
    private SwitchOff? CarriedBack { get; init; }

    /// <summary>Its insulation; null where it is not known.</summary>
    private InsulationClass? Insulation { get; init; }

    /// <summary>How long such insulation lasts at its limit; null where nobody says.</summary>
    private double? UsualYears { get; init; }

    /// <summary>Reads its fields.</summary>
    public static Rise Read(QuestionFields fields)
    {
        var isRead = fields.Has("hotOhms") || !fields.Has("after");
        if (fields.Has("hotOhms") && fields.Has("after"))
            fields.Report("after", "is given beside hotOhms", "give one of them");
        var (metal, cold) = (WindingMetal.Read(fields), ColdWinding.Read(fields));
        var back = isRead ? null : SwitchOff.Read(fields);
        var rise = new Rise(
            metal,
            cold,
            isRead ? fields.Number("hotOhms", NumberRange.Positive) : back?.Ohms ?? cold.Ohms,
            fields.Number("endCelsius", NumberRange.Celsius)
        )
        {
            CarriedBack = back,
            Insulation = fields.Has("insulation") ? InsulationClass.Of(fields.OneOf("insulation", InsulationClass.Letters)) : null,
            UsualYears = fields.Optional("usualYears", NumberRange.Positive),
        };
        if (fields.IsSoundAt("cold") && fields.IsSoundAt("after") && rise.Kelvin < -MostColderKelvin)
            fields.Report(
                isRead ? "hotOhms" : "after",
                FormattableString.Invariant($"makes the winding {-rise.Kelvin:0} °C colder than the room"),
                "read both again: the same winding, the same leads"
            );
        return rise;
    }

    private double Kelvin => ((HotOhms - Cold.Ohms) / Cold.Ohms * (Metal.K + Cold.Celsius)) - (EndCelsius - Cold.Celsius);

    /// <inheritdoc/>
    public override RiseAnswer Answer()
    {
        var ofClass = Insulation is { } row ? ClassOfWinding.Of(row, EndCelsius + Kelvin, UsualYears) : null;
        return new(Kelvin, EndCelsius + Kelvin)
        {
            AtSwitchOffOhms = CarriedBack?.Ohms,
            CoolsToOhms = CarriedBack?.EndOhms,
            Insulation = ofClass,
            Words =
            [
                .. CarriedBack is { } back
                    ? [FormattableString.Invariant($"Carried back to switch-off it had {back.Ohms:G5} Ω.")]
                    : ImmutableArray<string>.Empty,
                FormattableString.Invariant(
                    $"The winding is {Kelvin:0.0} °C warmer than the room: {EndCelsius + Kelvin:0.0} °C on average."
                ),
                .. ofClass is null ? ImmutableArray<string>.Empty : [ofClass.Words],
            ],
            Outside =
            [
                "This is the average of the winding. Its hottest spot is warmer, often by 10 °C (common practice, no source).",
                TestRecord.NoCertification,
            ],
        };
    }
}

/// <summary>What <c>rise</c> answers.</summary>
/// <param name="RiseKelvin">Over the room.</param>
/// <param name="WindingCelsius">On average.</param>
public sealed record RiseAnswer(double RiseKelvin, double WindingCelsius) : Answer
{
    /// <summary>Ohms carried back to switch-off; left out where they were read there.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? AtSwitchOffOhms { get; init; }

    /// <summary>Ohms to which it cools.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? CoolsToOhms { get; init; }

    /// <summary>Beside its class of insulation; left out where that was not given.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ClassOfWinding? Insulation { get; init; }
}
