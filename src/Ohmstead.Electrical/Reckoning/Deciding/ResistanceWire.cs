namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary><c>resistance-wire</c>: how long, how many ohms, and how hard it is driven (docs/methods/deciding.md).</summary>
/// <param name="OhmMillimetresSquaredPerMetre">Of the alloy at 20 °C; nickel-chrome about 1.09 (from memory).</param>
/// <param name="WantedOhms">At 20 °C; null where the length is given.</param>
/// <param name="GivenMetres">Null where ohms are wanted.</param>
/// <param name="PerKelvin">By what share its ohms rise with each kelvin.</param>
/// <param name="DutyPercent">Share of the time that current flows.</param>
public sealed record ResistanceWire(
    double DiameterMillimetres,
    double OhmMillimetresSquaredPerMetre,
    double? WantedOhms,
    double? GivenMetres,
    double Amps,
    double PerKelvin,
    double WireCelsius,
    double DutyPercent
) : Question
{
    /// <summary>No alloy changes by more with a kelvin.</summary>
    private const double MostPerKelvin = 0.02;

    /// <summary>Reads its fields.</summary>
    public static ResistanceWire Read(QuestionFields fields)
    {
        var (wanted, metres) = (fields.Optional("wantedOhms", NumberRange.Positive), fields.Optional("metres", NumberRange.Positive));
        if (wanted is null && metres is null)
            fields.Report("wantedOhms", "is missing, and metres too", "one of the two is required");
        if (wanted is not null && metres is not null)
            fields.Report("metres", "is given beside wantedOhms", "give one of the two");
        var (perKelvin, celsius) = (
            fields.Number("perKelvin", new NumberRange(-MostPerKelvin, MostPerKelvin), 0),
            fields.Number("wireCelsius", NumberRange.Celsius, 20)
        );
        if (1 + (perKelvin * (celsius - 20)) <= 0)
            fields.Report("perKelvin", "leaves no ohms at wireCelsius", "a share for each kelvin, such as 0.0001, is expected");
        return new(
            fields.Number("diameterMillimetres", NumberRange.Positive),
            fields.Number("ohmMillimetresSquaredPerMetre", NumberRange.Positive),
            wanted,
            metres,
            fields.Number("amps", NumberRange.NotNegative),
            perKelvin,
            celsius,
            fields.Number("dutyPercent", NumberRange.Percent, 100)
        );
    }

    /// <inheritdoc/>
    public override ResistanceWireAnswer Answer()
    {
        var perMetre = OhmMillimetresSquaredPerMetre * 4 / (Math.PI * DiameterMillimetres * DiameterMillimetres);
        var metres = WantedOhms / perMetre ?? GivenMetres!.Value;
        var ohms = perMetre * metres;
        var hot = ohms * (1 + (PerKelvin * (WireCelsius - 20)));
        var watts = Amps * Amps * hot * DutyPercent / 100;
        // Millimetres by metres are ten square centimetres.
        return new ResistanceWireAnswer(perMetre, metres, ohms, hot, watts, watts / (Math.PI * DiameterMillimetres * metres * 10))
        {
            Cautions =
            [
                "The old sleeve may hold asbestos. Do not cut, scrape or blow on it. Wet it, bag it, and follow local rules.",
                "Resistance wire gets hot enough to burn. Keep it clear of cloth, paper and leads.",
            ],
            Outside = ["How warm the wire gets depends on the air around it. Measure it in its place."],
        };
    }
}

/// <summary>What <c>resistance-wire</c> answers.</summary>
/// <param name="Ohms">At 20 °C.</param>
/// <param name="Watts">Hot, on average over the duty.</param>
/// <param name="WattsPerSquareCentimetre">Of the wire's surface.</param>
public sealed record ResistanceWireAnswer(
    double OhmsPerMetre,
    double Metres,
    double Ohms,
    double HotOhms,
    double Watts,
    double WattsPerSquareCentimetre
) : Answer;
