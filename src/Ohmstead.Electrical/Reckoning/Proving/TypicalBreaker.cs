using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>What is known of a breaker before it is timed: the curve of its type.</summary>
public static class TypicalBreaker
{
    /// <summary>What it carries for ever, as a multiple of what it is rated for; common practice, no source.</summary>
    private const double FloorRatio = 1.25;

    /// <summary>τ of a bimetal of this size [s]; common practice, no source.</summary>
    private const double UsualTau = 120;

    /// <summary>F of a breaker of a unit of this size [A]; common practice, no source.</summary>
    private const double UsualFloor = 11;

    /// <summary>
    /// The curve through the <c>tripCurve</c> of a type sheet, which is pairs of a multiple of the rated amps and seconds; without one, or
    /// where its points lie on no curve of a bimetal, a usual one for its rated amps.
    /// </summary>
    /// <returns>The curve, and true where the type sheet gives it.</returns>
    public static (BimetalCurve Curve, bool IsOfType) Of(Resistive breaker)
    {
        var trips = TripsOf(breaker);
        var curve = trips.Count switch
        {
            0 => null,
            1 => BimetalCurve.Through(trips[0], UsualTau),
            2 => BimetalCurve.Through(trips[0], trips[1]),
            _ => BimetalCurve.Through(trips),
        };
        return curve is { } fitted
            ? (fitted, true)
            : (new(breaker.RatedAmps > 0 ? FloorRatio * breaker.RatedAmps : UsualFloor, UsualTau), false);
    }

    private static List<Trip> TripsOf(Resistive breaker)
    {
        var trips = new List<Trip>();
        if (
            breaker.RatedAmps <= 0
            || breaker.AsRead.Json.ValueKind != JsonValueKind.Object
            || !breaker.AsRead.Json.TryGetProperty("tripCurve", out var curve)
            || curve.ValueKind != JsonValueKind.Array
        )
            return trips;
        foreach (var point in curve.EnumerateArray())
            if (
                point.ValueKind == JsonValueKind.Array
                && point.GetArrayLength() == 2
                && Number(point[0]) is > 0 and var multiple
                && Number(point[1]) is > 0 and var seconds
            )
                trips.Add(new(multiple * breaker.RatedAmps, seconds));
        return [.. trips.OrderBy(t => t.Amps)];
    }

    private static double Number(JsonElement at) => at.ValueKind == JsonValueKind.Number && at.TryGetDouble(out var value) ? value : 0;
}
