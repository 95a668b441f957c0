using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>A disc or a diode that may be fitted.</summary>
/// <param name="SaturationAmps">Of one junction, as the three after it.</param>
/// <param name="SeriesJunctions">So many in a row: slope, series and leakage each times it.</param>
/// <param name="IsExchanged">Fitted by the other ends.</param>
/// <param name="RatedReverseVolts">Null where it is not known.</param>
/// <param name="LeastReverseMargin">Rated volts over those it sees, at least.</param>
/// <param name="Body">Length and thickness [mm]; null where it was not measured.</param>
/// <param name="Cooling">How it gets rid of its heat; null where that is not known.</param>
public sealed record RectifierPart(
    string Id,
    double SaturationAmps,
    double SlopeVolts,
    double SeriesOhms,
    double LeakageOhms,
    int SeriesJunctions,
    bool IsExchanged,
    double? RatedReverseVolts,
    double LeastReverseMargin,
    (double Length, double Thickness)? Body,
    PartCooling? Cooling
)
{
    private const int MostJunctions = 100;

    internal static RectifierPart Read(QuestionFields fields, HashSet<string> ids) =>
        new(
            fields.NewId("id", ids),
            // The ranges of a type sheet's rectifier, within which the solver was proved.
            fields.Number("saturationAmps", new NumberRange(1e-16, 10)),
            fields.Number("slopeVolts", new NumberRange(0.005, 10)),
            fields.Number("seriesOhms", new NumberRange(0, 1e13)),
            fields.Number("leakageOhms", new NumberRange(1e-3, 1e13)),
            fields.Whole("seriesJunctions", 1, MostJunctions, 1),
            fields.Flag("exchanged"),
            fields.Optional("ratedReverseVolts", NumberRange.NotNegative),
            fields.Number("leastReverseMargin", NumberRange.NotNegative, 2),
            RectifierPlace.ReadPair(fields, "bodyMillimetres", "[length, thickness]"),
            fields.Part("thermal") is { } thermal ? PartCooling.Read(thermal) : null
        );

    /// <summary>The element of the circuit that this part makes where another sat.</summary>
    public Rectifier InPlaceOf(Rectifier old) =>
        old with
        {
            From = IsExchanged ? old.To : old.From,
            To = IsExchanged ? old.From : old.To,
            SaturationAmps = SaturationAmps,
            SlopeVolts = SeriesJunctions * SlopeVolts,
            SeriesOhms = SeriesJunctions * SeriesOhms,
            LeakageOhms = SeriesJunctions * LeakageOhms,
        };

    /// <summary>The drop at a current, leakage left out [V].</summary>
    public double ForwardVolts(double amps) =>
        SeriesJunctions * ((SlopeVolts * Math.Log(1 + (amps / SaturationAmps))) + (SeriesOhms * amps));
}

/// <summary>The room for a part, and the warmth in it.</summary>
/// <param name="Space">Free length and height [mm]; null where it was not measured.</param>
/// <param name="ClearanceMillimetres">All round the body. Common practice, no source.</param>
/// <param name="DutyPercent">Share of the time that the whistle is called.</param>
public sealed record RectifierPlace(
    (double Length, double Height)? Space,
    double ClearanceMillimetres,
    double InsideCelsius,
    double DutyPercent
)
{
    internal static RectifierPlace Read(QuestionFields fields) =>
        new(
            ReadPair(fields, "spaceMillimetres", "[length, height]"),
            fields.Number("clearanceMillimetres", NumberRange.NotNegative, 3),
            fields.Number("insideCelsius", NumberRange.Celsius, 45),
            fields.Number("dutyPercent", NumberRange.Percent, 100)
        );

    internal static (double, double)? ReadPair(QuestionFields fields, string name, string right)
    {
        if (!fields.Has(name))
            return null;
        var pair = fields.Numbers(name, NumberRange.NotNegative);
        if (pair.Length == 2)
            return (pair[0], pair[1]);
        fields.Report(name, "is no pair", $"{right} is expected");
        return null;
    }

    /// <summary>What is left over of the room, the tighter way; leads stand out lengthwise, with nothing more needed there.</summary>
    public double? Spare(RectifierPart part)
    {
        if (Space is not { } space || part.Body is not { } body)
            return null;
        var length = body.Length + (2 * (part.Cooling is LeadCooling leads ? leads.LeadMillimetres : ClearanceMillimetres));
        return Math.Min(space.Length - length, space.Height - body.Thickness - (2 * ClearanceMillimetres));
    }
}

/// <summary>The relay of the whistle, on DC at the rail.</summary>
/// <param name="PullInVolts">It is drawn at this, as public figures say.</param>
/// <param name="DropOutVolts">It lets go below this. No source.</param>
public sealed record WhistleRelay(double PullInVolts, double DropOutVolts)
{
    /// <summary>What a call comes to when the relay stays drawn.</summary>
    public const string Holds = "holds";

    /// <summary>The usual relay; editable.</summary>
    public static WhistleRelay Usual { get; } = new(1.5, 0.9);

    internal static WhistleRelay Read(QuestionFields? fields) =>
        new(
            fields?.Number("pullInVolts", NumberRange.NotNegative, Usual.PullInVolts) ?? Usual.PullInVolts,
            fields?.Number("dropOutVolts", NumberRange.NotNegative, Usual.DropOutVolts) ?? Usual.DropOutVolts
        );

    /// <summary>What a call comes to; null where a step could not be solved.</summary>
    public string? Whistles(double? firstVolts, double? secondVolts) =>
        Math.Abs(firstVolts ?? double.NaN) < PullInVolts ? "silent"
        : firstVolts is null || secondVolts is null ? null
        : Math.Abs(secondVolts.Value) < DropOutVolts ? "half pressed only"
        : Holds;
}
