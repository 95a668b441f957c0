using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary><c>breaker</c>: the curve of a thermal breaker from its trips, how long to hold, how long to wait (docs/methods/proving.md).</summary>
/// <param name="Trips">From cold, those at the same amps as one, the fewest amps first.</param>
/// <param name="Typical">The type's own curve; needed with fewer than two trips.</param>
/// <param name="Limits">The figures that a shop may edit.</param>
/// <param name="AtAmps">For which amps to say the seconds.</param>
/// <param name="TestAmps">Of the trip test.</param>
/// <param name="UsableAmps">What the unit carries for hours.</param>
/// <param name="BeforeAmps">A load carried for long before; it enters <c>at</c> alone.</param>
/// <param name="WaitsSeconds">After which waits to say the seconds of the next trip.</param>
/// <param name="CoolTauSeconds">τ while it cools; that of the curve where it is null.</param>
/// <param name="EveryOutputThroughIt">False where a post does not pass it.</param>
public sealed record Breaker(
    ImmutableArray<Trip> Trips,
    BimetalCurve? Typical,
    BreakerLimits Limits,
    ImmutableArray<double> AtAmps,
    double TestAmps,
    double UsableAmps,
    double BeforeAmps,
    ImmutableArray<double> WaitsSeconds,
    double? CoolTauSeconds,
    bool EveryOutputThroughIt
) : Question
{
    /// <summary>Reads its fields.</summary>
    public static Breaker Read(QuestionFields fields)
    {
        var limits = BreakerLimits.Read(fields);
        var trips = AsOne(
            fields.OptionalList(
                "trips",
                t => new Trip(t.Number("amps", NumberRange.Positive), t.Number("seconds", NumberRange.Positive)),
                100
            ),
            limits.AmpsPercent
        );
        var typical = (
            trips.Length < 2
                ? fields.NeededPart("typical", "with fewer than two trips { \"floorAmps\": …, \"tauSeconds\": … }")
                : fields.Part("typical")
        )
            is { } t
            ? new BimetalCurve(t.Number("floorAmps", NumberRange.Positive), t.Number("tauSeconds", NumberRange.Positive))
            : (BimetalCurve?)null;
        var breaker = new Breaker(
            trips,
            typical,
            limits,
            fields.Numbers("atAmps", NumberRange.NotNegative, ImmutableArray<double>.Empty),
            fields.Number("testAmps", NumberRange.Positive),
            fields.Number("usableAmps", NumberRange.NotNegative),
            fields.Number("beforeAmps", NumberRange.NotNegative, 0),
            fields.Numbers("waitsSeconds", NumberRange.NotNegative, ImmutableArray<double>.Empty),
            fields.Optional("coolTauSeconds", NumberRange.Positive),
            fields.Flag("everyOutputThroughIt", true)
        );
        if (trips.Length >= 2 && fields.IsSoundAt("trips") && breaker.Fit(trips) is null)
            fields.Report(
                "trips",
                "fit no curve of one breaker",
                "the second was not from cold, or these are not one breaker: let it cool, and time it again"
            );
        return breaker;
    }

    private static ImmutableArray<Trip> AsOne(ImmutableArray<Trip> trips, double percent)
    {
        var (left, groups) = (trips.OrderBy(t => t.Amps).ToList(), new List<Trip>());
        while (left.Count > 0)
        {
            var same = left.TakeWhile(t => t.Amps <= left[0].Amps * (1 + (percent / 100))).ToList();
            groups.Add(new(same.Average(t => t.Amps), same.Average(t => t.Seconds)));
            left.RemoveRange(0, same.Count);
        }
        return [.. groups];
    }

    private BimetalCurve? Fit(ImmutableArray<Trip> trips) =>
        trips.Length switch
        {
            0 => Typical,
            1 => BimetalCurve.Through(trips[0], Typical!.Value.TauSeconds),
            2 => BimetalCurve.Through(trips[0], trips[1]),
            _ => BimetalCurve.Through(trips),
        };

    /// <summary>The curves of every corner of the errors of amps and stopwatch; of none and of three and more, the one curve.</summary>
    private List<BimetalCurve> Corners(BimetalCurve curve)
    {
        if (Trips.Length is not (1 or 2))
            return [curve];
        var (part, watch) = (Limits.AmpsPercent / 100, Limits.StopwatchSeconds);
        IEnumerable<Trip> Of(Trip trip) =>
            from amps in new[] { trip.Amps * (1 - part), trip.Amps * (1 + part) }
            from seconds in new[] { trip.Seconds - watch, trip.Seconds + watch }
            where seconds > 0 && amps > 0
            select new Trip(amps, seconds);
        IEnumerable<BimetalCurve?> fits =
            Trips.Length == 1 ? Of(Trips[0]).Select(a => Fit([a])) : Of(Trips[0]).SelectMany(a => Of(Trips[1]).Select(b => Fit([a, b])));
        return [.. fits.OfType<BimetalCurve>().Append(curve)];
    }

    /// <inheritdoc/>
    public override BreakerAnswer Answer()
    {
        var curve = Fit(Trips)!.Value;
        var corners = Corners(curve);
        var cold = curve.Seconds(TestAmps, 0);
        var stop = Math.Min(Limits.HoldSeconds, 1.5 * corners.Max(c => c.Seconds(TestAmps, 0)));
        var why = Why(curve, cold);
        var verdict =
            why.Contains(TripsEarly) || why.Contains(SlowOnShort) ? "renew"
            : why.Contains(Slow) || !EveryOutputThroughIt ? "leave, add outside"
            : "leave";
        var (coolTau, ends) = (CoolTauSeconds ?? curve.TauSeconds, double.IsFinite(cold));
        return new(
            curve.FloorAmps,
            curve.TauSeconds,
            [
                .. AtAmps.Select(i => new TripAt(
                    i,
                    curve.Seconds(i, curve.HeatOf(BeforeAmps)),
                    corners.Min(c => c.Seconds(i, c.HeatOf(BeforeAmps))),
                    corners.Max(c => c.Seconds(i, c.HeatOf(BeforeAmps)))
                )),
            ],
            stop,
            ends ? Wait(curve, cold, coolTau) : double.PositiveInfinity,
            ends ? [.. WaitsSeconds.Select(w => new TripAfter(w, curve.Seconds(TestAmps, Math.Exp(-w / coolTau))))] : [],
            why,
            verdict
        )
        {
            Words = BreakerWords.Of(verdict, why, cold, stop, EveryOutputThroughIt),
            Cautions = BreakerWords.Cautions,
            Outside = BreakerWords.Outside,
        };
    }

    /// <summary>Until the next trip is within so many percent of the cold one: −coolTau·ln x₀, x₀ from seconds = (1 − same)·t₀.</summary>
    private double Wait(BimetalCurve curve, double cold, double coolTau)
    {
        var (square, floor) = (TestAmps * TestAmps, curve.FloorAmps * curve.FloorAmps);
        var left = (square - ((square - floor) * Math.Exp((1 - (Limits.SamePercent / 100)) * cold / curve.TauSeconds))) / floor;
        return -coolTau * Math.Log(Math.Clamp(left, 0, 1));
    }

    private const string TripsEarly = "trips early";
    private const string Slow = "slow";
    private const string SlowOnShort = "slow on a short";

    private ImmutableArray<string> Why(BimetalCurve curve, double cold) =>
        [
            .. curve.FloorAmps < UsableAmps ? [TripsEarly] : ImmutableArray<string>.Empty,
            .. !(cold <= Limits.SlowSeconds) ? [Slow] : ImmutableArray<string>.Empty,
            .. !(curve.Seconds(Limits.ShortAmps, 0) <= Limits.ShortSeconds) ? [SlowOnShort] : ImmutableArray<string>.Empty,
        ];
}

/// <summary>What <c>breaker</c> answers; seconds that never come are infinite here and null in the file.</summary>
/// <param name="FloorAmps">F.</param>
/// <param name="TauSeconds">τ.</param>
/// <param name="At">At the amps asked for.</param>
/// <param name="StopSeconds">Hands off, and switch off at this count.</param>
/// <param name="WaitSeconds">Until the next trip counts as one from cold.</param>
/// <param name="After">The next trip after each wait.</param>
/// <param name="Why">What speaks against it.</param>
/// <param name="Verdict">renew; leave, add outside; or leave.</param>
public sealed record BreakerAnswer(
    double FloorAmps,
    double TauSeconds,
    ImmutableArray<TripAt> At,
    double StopSeconds,
    double WaitSeconds,
    ImmutableArray<TripAfter> After,
    ImmutableArray<string> Why,
    string Verdict
) : Answer;

/// <summary>Seconds at so many amps, from the fewest to the most that the readings leave open.</summary>
public sealed record TripAt(double Amps, double Seconds, double LowSeconds, double HighSeconds);

/// <summary>Seconds of the next trip after a wait.</summary>
public sealed record TripAfter(double WaitSeconds, double Seconds);
