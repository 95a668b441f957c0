using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// <c>cord</c>: what a cord drops, how much it carries in the warmth around it, and whether it goes through
/// eyelet and grommet (docs/methods/deciding.md).
/// </summary>
/// <param name="SquareMillimetres">Copper of one conductor; above 0.</param>
/// <param name="RatedAmps">What it carries at 30 °C around it; null where nobody knows.</param>
/// <param name="InsulationCelsius">What the insulation is made for; above 30.</param>
/// <param name="Packing">Share of copper in the circle that the strands fill.</param>
/// <param name="EyeletMillimetres">Bore; null where it was not measured, as the two after it.</param>
/// <param name="Relief">knot, clamp, none, or not looked at.</param>
public sealed record Cord(
    double SquareMillimetres,
    double? RatedAmps,
    double Metres,
    double Amps,
    double SupplyVolts,
    double ConductorCelsius,
    double AmbientCelsius,
    double InsulationCelsius,
    double Packing,
    double? EyeletMillimetres,
    double? OutsideMillimetres,
    double? GrommetMillimetres,
    string Relief,
    bool IsPolarised
) : Question
{
    /// <summary>Ohms of a metre of copper of 1 mm² at 20 °C (key iec-60028).</summary>
    private const double OhmsAt20 = 1.0 / 58;

    /// <summary>The table's amps are for this warmth around the cord [°C].</summary>
    private const double TableCelsius = 30;

    /// <summary>Reads its fields.</summary>
    public static Cord Read(QuestionFields fields)
    {
        var (area, rated) = Conductor(fields, fields.Whole("conductors", 2, 3, 2));
        return new(
            area,
            fields.Optional("ratedAmps", NumberRange.NotNegative) ?? rated,
            fields.Number("metres", NumberRange.Positive),
            fields.Number("amps", NumberRange.NotNegative),
            fields.Number("supplyVolts", NumberRange.Positive),
            fields.Number("conductorCelsius", NumberRange.Celsius, 60),
            fields.Number("ambientCelsius", NumberRange.Celsius, 30),
            fields.Number("insulationCelsius", new NumberRange(TableCelsius, 2000, WithoutLow: true), 60),
            fields.Number("packing", new NumberRange(0, 1, WithoutLow: true), 0.75),
            fields.Optional("eyeletMillimetres", NumberRange.NotNegative),
            fields.Optional("outsideMillimetres", NumberRange.NotNegative),
            fields.Optional("grommetMillimetres", NumberRange.NotNegative),
            fields.OneOf("relief", ["knot", "clamp", "none", "not looked at"], "not looked at"),
            fields.Flag("polarised")
        )
        {
            IsExtension = fields.Flag("extension"),
        };
    }

    /// <summary>It is an extension cord: how long one may be is tabled.</summary>
    private bool IsExtension { get; init; }

    private const double MetresPerFoot = 0.3048;

    private static readonly ImmutableArray<(int GaugeAwg, double Amps, double Feet)> Extensions =
    [
        (16, 10, 100),
        (16, 13, 50),
        (14, 13, 100),
        (14, 15, 50),
        (12, 15, 100),
    ];

    /// <summary>How long an extension cord of a gauge may be for so many amps [ft] (key extension-cords); null where the table has none.</summary>
    public static double? ExtensionFeet(int gaugeAwg, double amps) =>
        Extensions.Where(e => e.GaugeAwg == gaugeAwg && amps <= e.Amps).Select(e => (double?)e.Feet).FirstOrDefault();

    /// <summary>The thickest tabled gauge that is no thicker than this cord; null for one thinner than all.</summary>
    private int? ExtensionGauge =>
        Extensions.Where(e => AreaOf(e.GaugeAwg) <= SquareMillimetres * (1 + 1e-9)).Select(e => (int?)e.GaugeAwg).Min();

    /// <summary>Copper of one conductor [mm²] and the amps of the table; a gauge is the first of the two ways to say it.</summary>
    private static (double Area, double? Amps) Conductor(QuestionFields fields, int conductors)
    {
        var area = fields.Optional("squareMillimetres", NumberRange.Positive);
        if (fields.Has("gaugeAwg") || area is null)
        {
            var gauge = fields.Whole("gaugeAwg", 10, 24);
            return (AreaOf(gauge), TableAmps(gauge, conductors));
        }
        return (area.Value, null);
    }

    /// <summary>Copper of an American gauge [mm²]: d = 0.127·92^((36−n)/39) mm (key astm-b258).</summary>
    public static double AreaOf(int gaugeAwg)
    {
        var d = 0.127 * Math.Pow(92, (36.0 - gaugeAwg) / 39);
        return Math.PI * d * d / 4;
    }

    /// <summary>
    /// What a flexible cord carries at 30 °C [A] (key nec-400-5; three conductors that carry current from memory); null for a gauge not in
    /// that table.
    /// </summary>
    /// <param name="conductors">That carry current: 2 or 3.</param>
    public static double? TableAmps(int gaugeAwg, int conductors = 2) =>
        (gaugeAwg, conductors) switch
        {
            (18, 2) => 10,
            (17, 2) => 12,
            (16, 2) => 13,
            (14, 2) => 18,
            (12, 2) => 25,
            (18, 3) => 7,
            (16, 3) => 10,
            (14, 3) => 15,
            (12, 3) => 20,
            _ => null,
        };

    /// <inheritdoc/>
    public override CordAnswer Answer()
    {
        var ohms = 2 * OhmsAt20 / SquareMillimetres * (234.5 + ConductorCelsius) / 254.5 * Metres;
        var drop = Amps * ohms;
        var room = (InsulationCelsius - AmbientCelsius) / (InsulationCelsius - TableCelsius);
        var ampacity = RatedAmps * Math.Sqrt(Math.Max(0, room));
        var strands = Math.Sqrt(4 * SquareMillimetres / Math.PI / Packing);
        var spare = EyeletMillimetres - strands;
        var feet = IsExtension && ExtensionGauge is { } gauge ? ExtensionFeet(gauge, Amps) : null;
        var isTooLong = IsExtension && !(Metres <= feet * MetresPerFoot * (1 + 1e-9));
        ImmutableArray<string> why =
        [
            .. Reasons.If("too thin", ampacity < Amps),
            .. Reasons.If("rating unknown", ampacity is null),
            .. Reasons.If("too long", isTooLong),
            .. Reasons.If("eyelet", spare < 0),
            .. Reasons.If("grommet", OutsideMillimetres > GrommetMillimetres),
            .. Reasons.If("no strain relief", Relief == "none"),
        ];
        return new CordAnswer(
            ohms,
            drop,
            100 * drop / SupplyVolts,
            drop * Amps,
            drop * Amps / Metres,
            ampacity,
            strands,
            why,
            spare,
            why.IsEmpty
        )
        {
            ExtensionFeet = feet,
            Words =
            [
                why.IsEmpty ? "This cord fits." : $"Not this cord yet: {string.Join(", ", why.Select(Said))}.",
                .. Reasons.If("Look at the strain relief too.", Relief == "not looked at"),
                .. Reasons.If(
                    isTooLong && feet is null
                        ? "No extension cord of this gauge is tabled for these amps. Use a thicker one."
                        : FormattableString.Invariant($"An extension cord of this gauge may be {feet:0} ft long for these amps."),
                    IsExtension
                ),
                .. Reasons.If(
                    $"A polarized plug changes nothing here. {PlugBlades.Words} The question \"together\" looks at plugs.",
                    IsPolarised
                ),
            ],
            Cautions = ["Mains runs in this cord. Unplug it before you touch it."],
            Outside =
            [
                "Local codes come first. They may ask for a thicker cord.",
                "The amps of the table are for a flexible cord in free air, counting the conductors that carry current.",
            ],
        };
    }

    private static string Said(string why) =>
        why switch
        {
            "eyelet" => "the strands do not go through the eyelet",
            "grommet" => "it does not go through the grommet",
            _ => why,
        };
}

/// <summary>What <c>cord</c> answers.</summary>
/// <param name="LoopOhms">Of both conductors.</param>
/// <param name="WattsPerMetre">Of cord.</param>
/// <param name="AmpacityAmps">In the warmth around it; null where its rating is not known.</param>
/// <param name="Why">What speaks against it.</param>
/// <param name="EyeletSpareMillimetres">What the strands leave of the eyelet; null where it was not measured.</param>
/// <param name="Fit">Nothing speaks against it.</param>
public sealed record CordAnswer(
    double LoopOhms,
    double DropVolts,
    double DropPercent,
    double CordWatts,
    double WattsPerMetre,
    double? AmpacityAmps,
    double StrandsMillimetres,
    ImmutableArray<string> Why,
    double? EyeletSpareMillimetres,
    bool Fit
) : Answer
{
    /// <summary>How long an extension cord of its gauge may be; left out for any other cord, and where the table has none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? ExtensionFeet { get; init; }
}
