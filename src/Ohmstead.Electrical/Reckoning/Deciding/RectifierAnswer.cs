using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>What <c>rectifier</c> answers.</summary>
public sealed record RectifierAnswer(ImmutableArray<RectifierOfPart> Parts) : Answer;

/// <summary>One part in the place.</summary>
/// <param name="Forward">Its drop, leakage left out.</param>
/// <param name="Polarity">either, as wanted, or exchange its ends; null where the first state could not be solved.</param>
/// <param name="PeakReverseVolts">The greatest of all loads and steps, as the two after it.</param>
/// <param name="ReverseMargin">Rated volts over those; null where one of them is not known.</param>
/// <param name="Fits">Null where room or body was not measured, as the spare.</param>
/// <param name="JunctionCelsius">Null without figures of its cooling, as all after it.</param>
/// <param name="LeadRule">Which lengths of lead are cool enough: any, none, at-most, at-least; null on a plate.</param>
/// <param name="LeadMillimetres">That length, or null.</param>
/// <param name="PlateSquareCentimetres">The least plate that is enough; null if none is, and on leads.</param>
public sealed record RectifierOfPart(
    string Id,
    ImmutableArray<ForwardDrop> Forward,
    ImmutableArray<RectifierAtLoad> Loads,
    string? Polarity,
    double? PeakReverseVolts,
    double? PeakAmps,
    double? Watts,
    double? ReverseMargin,
    bool? ReverseEnough,
    bool? Fits,
    double? SpareMillimetres,
    double? JunctionCelsius,
    double? KelvinPerWatt,
    bool? CoolEnough,
    string? LeadRule,
    double? LeadMillimetres,
    double? PlateSquareCentimetres
)
{
    /// <summary>What rounding of tenths of a millimetre comes to.</summary>
    private const double Rounding = 1e-9;

    internal static RectifierOfPart Of(
        RectifierPart part,
        RectifierPlace place,
        ImmutableArray<double> forwardAmps,
        ImmutableArray<RectifierAtLoad> loads,
        string? polarity,
        double? peakReverseVolts,
        double? peakAmps,
        double? watts
    )
    {
        var spare = place.Spare(part);
        var heat = watts * place.DutyPercent / 100;
        var celsius = heat is { } w ? part.Cooling?.JunctionCelsius(place.InsideCelsius, w) : null;
        var (rule, millimetres) =
            part.Cooling is LeadCooling leads && heat is { } inLeads ? leads.Lengths(place.InsideCelsius, inLeads) : (null, null);
        return new(
            part.Id,
            [.. forwardAmps.Select(i => new ForwardDrop(i, part.ForwardVolts(i)))],
            loads,
            polarity,
            peakReverseVolts,
            peakAmps,
            watts,
            peakReverseVolts > 0 ? part.RatedReverseVolts / peakReverseVolts : null,
            part.RatedReverseVolts >= part.LeastReverseMargin * peakReverseVolts is var enough
            && part.RatedReverseVolts is not null
            && peakReverseVolts is not null
                ? enough
                : null,
            spare is { } left ? left >= -Rounding : null,
            spare,
            celsius,
            part.Cooling?.KelvinPerWatt,
            celsius <= part.Cooling?.MostCelsius is var cool && celsius is not null ? cool : null,
            rule,
            millimetres,
            part.Cooling is PlateCooling plate && heat is { } inPlate ? plate.LeastSquareCentimetres(place.InsideCelsius, inPlate) : null
        );
    }
}

/// <summary>A current and the drop at it.</summary>
public sealed record ForwardDrop(double Amps, double Volts);

/// <summary>A load, and what the two steps of the lever give there.</summary>
/// <param name="First">Null where it could not be solved, as the second.</param>
/// <param name="Whistle">silent, half pressed only, or holds.</param>
public sealed record RectifierAtLoad(double Ohms, RectifierState? First, RectifierState? Second, string? Whistle);

/// <summary>Volts at the post, and what the whole part sees, leakage included.</summary>
/// <param name="AcVolts">Mean removed.</param>
/// <param name="Watts">Mean of volts times amps in the part.</param>
public sealed record RectifierState(
    double DcVolts,
    double AcVolts,
    double RmsVolts,
    double PeakReverseVolts,
    double PeakAmps,
    double Watts
);
