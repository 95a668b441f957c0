using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// <c>roller</c>: what is left of a throttle's roller, what it takes, and whether to replace it. A roller that lies on two turns
/// closes them on themselves: V/(2R + r) flows round through both its sides and the turn, whatever the load; the load's current
/// comes half through each side (docs/methods/deciding.md).
/// </summary>
/// <param name="FlatMillimetres">Across the flat; at most the diameter it has now.</param>
/// <param name="TurnVolts">Between the two turns [V RMS].</param>
/// <param name="SideOhms">R, from one turn into the roller's body; above 0.</param>
/// <param name="LoadAmps">At which loads to say what it takes.</param>
public sealed record Roller(
    double NewMillimetres,
    double NowMillimetres,
    double FlatMillimetres,
    double TurnVolts,
    double TurnOhms,
    double SideOhms,
    ImmutableArray<double> LoadAmps,
    RollerLimits Limits
) : Question
{
    /// <summary>Reads its fields.</summary>
    public static Roller Read(QuestionFields fields)
    {
        var (fresh, now) = (fields.Number("newMillimetres", NumberRange.Positive), fields.Number("nowMillimetres", NumberRange.Positive));
        if (now > fresh && fields.Holds("newMillimetres", NumberRange.Positive) && fields.Holds("nowMillimetres", NumberRange.Positive))
            fields.Report("nowMillimetres", "is above newMillimetres", "a roller only wears down");
        var flat = fields.Number("flatMillimetres", NumberRange.NotNegative, 0);
        if (flat > now && fields.Holds("nowMillimetres", NumberRange.Positive) && fields.Holds("flatMillimetres", NumberRange.NotNegative))
            fields.Report("flatMillimetres", "is above nowMillimetres", "a flat is no wider than the roller");
        return new(
            fresh,
            now,
            flat,
            fields.Number("turnVolts", NumberRange.NotNegative),
            fields.Number("turnOhms", NumberRange.NotNegative, 0),
            fields.Number("sideOhms", NumberRange.Positive),
            fields.Numbers("loadAmps", NumberRange.NotNegative, [2.5, 5]),
            RollerLimits.Read(fields)
        );
    }

    /// <inheritdoc/>
    public override RollerAnswer Answer()
    {
        var (sides, loop) = (2 * SideOhms, (2 * SideOhms) + TurnOhms);
        var remaining = 100 * NowMillimetres / NewMillimetres;
        var loopAmps = TurnVolts / loop;
        var loopWatts = sides * loopAmps * loopAmps;
        ImmutableArray<string> why =
        [
            .. Reasons.If("worn", remaining < Limits.LeastPercent),
            .. Reasons.If("flat", FlatMillimetres > Limits.MostFlatMillimetres),
            .. Reasons.If("contact", SideOhms > Limits.MostSideOhms),
            .. Reasons.If("loop", loopWatts > Limits.MostLoopWatts),
        ];
        var isNear = loopWatts > Limits.WatchLoopWatts || remaining <= Limits.LeastPercent + RollerLimits.NearPercent;
        return new RollerAnswer(
            remaining,
            (NewMillimetres - NowMillimetres) / 2,
            FlatDepth(),
            loopAmps,
            loopWatts,
            [
                .. LoadAmps.Select(amps => new RollerLoad(
                    amps,
                    amps * loop / 4,
                    sides * ((loopAmps * loopAmps) + (amps * amps / 4)),
                    amps * SideOhms,
                    amps * amps * SideOhms
                )),
            ],
            why.Length > 0 ? "renew"
                : isNear ? "watch"
                : "leave",
            why
        )
        {
            Words =
            [
                why.Length > 0 ? "Replace this roller."
                : isNear ? "Leave it for now. Look again at the next repair."
                : "Leave it.",
                "The material shows in the ohms of a side. Carbon has 0.03–0.18 Ω, bronze 0.002–0.006 Ω: common practice, no source.",
                .. Reasons.If("The limits of a roller are common practice, no source.", Limits == RollerLimits.Usual),
            ],
            Outside =
            [
                "The leakage reactance of one turn is left out. It makes the loop current a little less.",
                "A roller heats at one spot. That spot is worse than the watts say.",
            ],
        };
    }

    /// <summary>The sagitta of the flat's chord, written so that nothing cancels.</summary>
    private double FlatDepth() =>
        FlatMillimetres
        * FlatMillimetres
        / (2 * (NowMillimetres + Math.Sqrt((NowMillimetres * NowMillimetres) - (FlatMillimetres * FlatMillimetres))));
}

/// <summary>From where on a roller is replaced, or watched. Common practice, no source; editable.</summary>
public sealed record RollerLimits(
    double LeastPercent,
    double MostFlatMillimetres,
    double MostSideOhms,
    double MostLoopWatts,
    double WatchLoopWatts
)
{
    /// <summary>So near to the least diameter a roller is watched [% points].</summary>
    public const double NearPercent = 5;

    /// <summary>The usual limits.</summary>
    public static RollerLimits Usual { get; } = new(70, 0.5, 0.5, 3, 1.5);

    internal static RollerLimits Read(QuestionFields fields) =>
        new(
            fields.Number("leastPercent", NumberRange.Percent, Usual.LeastPercent),
            fields.Number("mostFlatMillimetres", NumberRange.NotNegative, Usual.MostFlatMillimetres),
            fields.Number("mostSideOhms", NumberRange.NotNegative, Usual.MostSideOhms),
            fields.Number("mostLoopWatts", NumberRange.NotNegative, Usual.MostLoopWatts),
            fields.Number("watchLoopWatts", NumberRange.NotNegative, Usual.WatchLoopWatts)
        );
}

/// <summary>What <c>roller</c> answers.</summary>
/// <param name="ArmSinksMillimetres">So much nearer the arm comes to the coil.</param>
/// <param name="LoopWatts">In both sides of the roller, with no load at all.</param>
/// <param name="Verdict">renew, watch or leave.</param>
/// <param name="Why">What is beyond its limit.</param>
public sealed record RollerAnswer(
    double RemainingPercent,
    double ArmSinksMillimetres,
    double FlatDepthMillimetres,
    double LoopAmps,
    double LoopWatts,
    ImmutableArray<RollerLoad> Loads,
    string Verdict,
    ImmutableArray<string> Why
) : Answer;

/// <summary>What a roller takes at a load: lying on two turns, and on one.</summary>
public sealed record RollerLoad(double Amps, double BridgingVoltsLost, double BridgingWatts, double OneTurnVoltsLost, double OneTurnWatts);
