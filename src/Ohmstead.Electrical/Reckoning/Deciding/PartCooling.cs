using System.Text.Json;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>How a part gets rid of its heat: by its leads, or by a plate. Steady heat in free air (docs/methods/deciding.md).</summary>
/// <param name="MostCelsius">Of the junction.</param>
public abstract record PartCooling(double MostCelsius)
{
    /// <summary>Reads its fields; null, with its problem, where it is neither: no more is asked of it then.</summary>
    internal static PartCooling? Read(QuestionFields fields)
    {
        var mount = fields.Element.TryGetProperty("mount", out var said) && said.ValueKind == JsonValueKind.String ? said.GetString() : "";
        fields.OneOf("mount", [Leads, Plate]);
        return mount == Leads ? LeadCooling.ReadLeads(fields)
            : mount == Plate ? PlateCooling.ReadPlate(fields)
            : null;
    }

    private const string Leads = "leads";
    private const string Plate = "plate";

    /// <summary>From junction to air [K/W]; infinite where no heat gets out.</summary>
    public abstract double KelvinPerWatt { get; }

    /// <summary>How warm the junction gets.</summary>
    public double JunctionCelsius(double insideCelsius, double watts) =>
        watts > 0 ? insideCelsius + (watts * KelvinPerWatt) : insideCelsius;

    /// <summary>The most from junction to air that keeps it cool enough [K/W]; infinite where there is no heat.</summary>
    protected double MostKelvinPerWatt(double insideCelsius, double watts) =>
        watts > 0 ? (MostCelsius - insideCelsius) / watts
        : insideCelsius <= MostCelsius ? double.PositiveInfinity
        : -1;
}

/// <summary>
/// Two leads, each a fin with a tip that conducts into its lug (key incropera, fin table, convective tip): G = G0·(tanh mL + r)/(1 + r·tanh mL)
/// with G0 = √(h·πd·k·πd²/4), m = √(4h/(kd)), r = lug/G0.
/// </summary>
/// <param name="LeadMillimetres">Of each lead.</param>
/// <param name="JointWattsPerKelvin">From the end of a lead into its lug.</param>
public sealed record LeadCooling(
    double JunctionToLeadKelvinPerWatt,
    double LeadMillimetres,
    double LeadDiameterMillimetres,
    double LeadWattsPerMetreKelvin,
    double AirWattsPerSquareMetreKelvin,
    double JointWattsPerKelvin,
    double MostCelsius
) : PartCooling(MostCelsius)
{
    internal static LeadCooling ReadLeads(QuestionFields fields) =>
        new(
            fields.Number("junctionToLeadKelvinPerWatt", NumberRange.NotNegative),
            fields.Number("leadMillimetres", NumberRange.NotNegative),
            fields.Number("leadDiameterMillimetres", NumberRange.Positive, 1.3),
            fields.Number("leadWattsPerMetreKelvin", NumberRange.Positive, 390),
            fields.Number("airWattsPerSquareMetreKelvin", NumberRange.Positive, 15),
            fields.Number("jointWattsPerKelvin", NumberRange.NotNegative, 0.05),
            fields.Number("mostCelsius", NumberRange.Celsius, 125)
        );

    private double Metres => LeadDiameterMillimetres / 1000;

    /// <summary>What a lead without end gives off [W/K].</summary>
    private double EndlessWattsPerKelvin =>
        Math.PI * Math.Sqrt(AirWattsPerSquareMetreKelvin * LeadWattsPerMetreKelvin * Metres * Metres * Metres / 4);

    /// <summary>How fast its warmth falls [1/m].</summary>
    private double FallPerMetre => Math.Sqrt(4 * AirWattsPerSquareMetreKelvin / (LeadWattsPerMetreKelvin * Metres));

    private double Ratio => JointWattsPerKelvin / EndlessWattsPerKelvin;

    /// <inheritdoc/>
    public override double KelvinPerWatt
    {
        get
        {
            var (t, r) = (Math.Tanh(FallPerMetre * LeadMillimetres / 1000), Ratio);
            return (JunctionToLeadKelvinPerWatt + ((1 + (r * t)) / (EndlessWattsPerKelvin * (t + r)))) / 2;
        }
    }

    /// <summary>Which lengths of lead are cool enough, and the one at the limit [mm], or null.</summary>
    public (string Rule, double? Millimetres) Lengths(double insideCelsius, double watts)
    {
        var room = (2 * MostKelvinPerWatt(insideCelsius, watts)) - JunctionToLeadKelvinPerWatt;
        if (room <= 0)
            return ("none", null);
        // What a lead has to give off at least, as a share of one without end. Lengths reach from the lug's share to 1.
        var (needed, r) = (1 / (room * EndlessWattsPerKelvin), Ratio);
        if (needed <= Math.Min(r, 1))
            return ("any", null);
        // A lead without end is never there: 1 is reached by no length, the lug's share by the shortest.
        if (needed > Math.Max(r, 1) || (needed >= 1 && r <= 1))
            return ("none", null);
        var millimetres = 1000 * Math.Atanh((needed - r) / (1 - (needed * r))) / FallPerMetre;
        return (r > 1 ? "at-most" : "at-least", millimetres);
    }
}

/// <summary>A plate that gives off heat by one face or both.</summary>
public sealed record PlateCooling(
    double JunctionToPlateKelvinPerWatt,
    double PlateSquareCentimetres,
    bool IsBothFaces,
    double AirWattsPerSquareMetreKelvin,
    double MostCelsius
) : PartCooling(MostCelsius)
{
    private const double SquareCentimetres = 1e4;

    internal static PlateCooling ReadPlate(QuestionFields fields) =>
        new(
            fields.Number("junctionToPlateKelvinPerWatt", NumberRange.NotNegative),
            fields.Number("plateSquareCentimetres", NumberRange.Positive),
            fields.Flag("bothFaces", true),
            fields.Number("airWattsPerSquareMetreKelvin", NumberRange.Positive, 10),
            fields.Number("mostCelsius", NumberRange.Celsius, 125)
        );

    private double PerArea => AirWattsPerSquareMetreKelvin * (IsBothFaces ? 2 : 1) / SquareCentimetres;

    /// <inheritdoc/>
    public override double KelvinPerWatt => JunctionToPlateKelvinPerWatt + (1 / (PerArea * PlateSquareCentimetres));

    /// <summary>The least area that is cool enough [cm²]; null where none is.</summary>
    public double? LeastSquareCentimetres(double insideCelsius, double watts)
    {
        var room = MostKelvinPerWatt(insideCelsius, watts) - JunctionToPlateKelvinPerWatt;
        return room > 0 ? 1 / (PerArea * room) : null;
    }
}
