using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Carrying;

/// <summary>
/// Finds what a pair of posts carries for hours: the least of what the core, and each part that carries the load's current,
/// allow. The currents are those of the solved circuit under that load, each part's own share. Resistive load; one pair alone;
/// windings as warm as the reading says.
/// </summary>
public static class OutletLimits
{
    /// <summary>A part whose current rises with the load by less than this share of it is not in its path.</summary>
    private const double LeastShare = 0.005;

    private const double Tolerance = 1e-5;
    private const int MostRounds = 40;

    /// <summary>The limit of the pair of posts of a reading, at the setting and on the supply of that reading.</summary>
    /// <param name="reading">Volts between two posts, the unit fed from the mains; its loads are left off.</param>
    /// <param name="usableWatts">What the unit gives for hours, all posts together [W]; above 0.</param>
    /// <returns>Null where the pair gives no volts to speak of, falls to half its volts before anything holds it, no load settles at
    /// its limit, or the circuit cannot be solved: then nothing is promised.</returns>
    public static OutletLimit? Of(UnitModel model, ReadingSpec reading, double usableWatts)
    {
        var currents = new PartCurrents(model, reading);
        var idle = reading.State with { Loads = [] };
        ReadingState With(double ohms) => idle with { Loads = [new LoadSpec(reading.From, reading.To, ohms, 0)] };
        double? VoltsAt(ReadingState state) => currents.VoltsBetween(reading.From, reading.To, reading.Quantity, state);
        if (VoltsAt(idle) is not { } idleVolts || !(idleVolts > 0))
            return null;
        var limits = new PartLimits(model, currents, idle, idleVolts, usableWatts);
        var ohms = idleVolts * idleVolts / usableWatts;
        var path = Path(currents, limits, idle, With(ohms), idleVolts / ohms);
        for (var round = 0; round < MostRounds; round++)
        {
            var state = With(ohms);
            if (VoltsAt(state) is not { } volts || volts < idleVolts / 2)
                return null;
            var worst = new Held(volts * volts / ohms / usableWatts, "", new PartLimit(HeldBy.Core, usableWatts / volts, false));
            foreach (var part in path)
            {
                var limit = limits.Of(part.Id)!;
                if (currents.AmpsIn(part, state) is not { } amps)
                    return null;
                var share = amps / limit.Amps;
                if (share > worst.Share)
                    worst = new Held(share, part.Id, limit);
            }
            if (Math.Abs(worst.Share - 1) < Tolerance)
                return new OutletLimit(
                    idleVolts,
                    volts,
                    volts / ohms,
                    ohms,
                    worst.Limit.By,
                    worst.Part,
                    worst.Limit.Amps,
                    worst.Limit.IsEstimated,
                    path.Any(p => limits.Of(p.Id)!.By == HeldBy.Breaker)
                );
            // Current goes about as one over the resistance: each round divides what is off by ten or so.
            ohms *= worst.Share;
        }
        return null;
    }

    private static ImmutableArray<CarryingPart> Path(
        PartCurrents currents,
        PartLimits limits,
        ReadingState idle,
        ReadingState loaded,
        double amps
    ) =>
        [
            .. currents
                .PartsIn(loaded)
                .Where(p => limits.Of(p.Id) is not null)
                // One whose current cannot be solved stays in, and nothing is promised then.
                .Where(p => !(currents.AmpsIn(p, loaded) - currents.AmpsIn(p, idle) <= LeastShare * amps)),
        ];

    private sealed record Held(double Share, string Part, PartLimit Limit);
}
