using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// <c>lamp</c>: other lamps at the socket's volts beside the original, by the exponents of lamp rerating (key lamp-rerating): current as
/// V^0.55, light as V^3.4, life as V^−12 to V^−16 (docs/methods/deciding.md).
/// </summary>
/// <param name="Volts">At the socket.</param>
public sealed record LampInPlace(double Volts, RatedLamp Original, ImmutableArray<RatedLamp> Lamps) : Question
{
    private const double CurrentExponent = 0.55;
    private const double LightExponent = 3.4;

    /// <summary>A tenth more heat than the original's is let pass (common practice, no source).</summary>
    private const double MostHeat = 1.1;

    /// <summary>Reads its fields.</summary>
    public static LampInPlace Read(QuestionFields fields)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var original = fields.NeededPart("original", "{ \"volts\", \"amps\", \"base\" }");
        return new(
            fields.Number("volts", NumberRange.Positive),
            original is { } lamp ? RatedLamp.Read(lamp, "original") : new RatedLamp("original", 1, 1, ""),
            fields.List("lamps", f => RatedLamp.Read(f, f.NewId("id", ids)))
        );
    }

    /// <inheritdoc/>
    public override LampAnswer Answer() =>
        new([.. Lamps.Select(Of)])
        {
            Words = ["A tenth more heat than the original lamp passes: common practice, no source."],
            Outside = ["The exponents hold near a lamp's rated volts. Far from them life and light are rough."],
        };

    private LampAtSocket Of(RatedLamp lamp)
    {
        var x = Volts / lamp.Volts;
        var (amps, one, other) = (AmpsOf(lamp), Math.Pow(x, -12), Math.Pow(x, -16));
        return new LampAtSocket(
            lamp.Id,
            amps,
            Volts * amps,
            100 * LightOf(lamp) / LightOf(Original),
            Math.Min(one, other),
            Math.Max(one, other),
            lamp.Base == Original.Base,
            amps <= MostHeat * AmpsOf(Original)
        );
    }

    private double AmpsOf(RatedLamp lamp) => lamp.Amps * Math.Pow(Volts / lamp.Volts, CurrentExponent);

    private double LightOf(RatedLamp lamp) => lamp.Volts * lamp.Amps * Math.Pow(Volts / lamp.Volts, LightExponent);
}

/// <summary>A lamp as it is marked.</summary>
public sealed record RatedLamp(string Id, double Volts, double Amps, string Base)
{
    internal static RatedLamp Read(QuestionFields fields, string id) =>
        new(id, fields.Number("volts", NumberRange.Positive), fields.Number("amps", NumberRange.Positive), fields.Word("base"));
}

/// <summary>What <c>lamp</c> answers.</summary>
public sealed record LampAnswer(ImmutableArray<LampAtSocket> Lamps) : Answer;

/// <summary>A lamp at the socket's volts.</summary>
/// <param name="LightPercent">Of the original's light there.</param>
/// <param name="LifeFactorLow">Life there over rated life, by the lesser of the two exponents.</param>
/// <param name="Fits">The same base.</param>
/// <param name="CoolEnough">No more than a tenth more watts than the original there.</param>
public sealed record LampAtSocket(
    string Id,
    double Amps,
    double Watts,
    double LightPercent,
    double LifeFactorLow,
    double LifeFactorHigh,
    bool Fits,
    bool CoolEnough
);
