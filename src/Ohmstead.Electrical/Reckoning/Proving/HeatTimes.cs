using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>What is known of the heating of such units before the run; common practice, no source, until the shop has runs of the type.</summary>
/// <param name="SlowMinutes">Median of the slow time: the core and all that is on it.</param>
/// <param name="SlowSpread">Spread of its logarithm.</param>
/// <param name="FastMinutes">Median of the fast time: the winding against the core.</param>
/// <param name="FastSpread">Spread of its logarithm.</param>
/// <param name="LeastShare">Of the final rise that is the winding's over the core, at least.</param>
/// <param name="MostShare">At most.</param>
internal sealed record HeatTimes(
    double SlowMinutes,
    double SlowSpread,
    double FastMinutes,
    double FastSpread,
    double LeastShare,
    double MostShare
)
{
    private static readonly NumberRange Minutes = new(0.01, 10_080);
    private static readonly NumberRange Spread = new(0, 2);

    /// <summary>Reads the part <c>times</c>.</summary>
    internal static HeatTimes Read(QuestionFields fields)
    {
        if (fields.Part("times") is not { } times)
            return new(64, 0.25, 5, 0.3, 0.02, 0.30);
        var share = times.Numbers("fastShare", new NumberRange(0, 0.95), ImmutableArray.Create(0.02, 0.30));
        if (share.Length != 2 || share[0] > share[1])
            times.Report("fastShare", "is no range", "two shares of the rise, the least first");
        return new(
            times.Number("slowMinutes", Minutes, 64),
            times.Number("slowSpread", Spread, 0.25),
            times.Number("fastMinutes", Minutes, 5),
            times.Number("fastSpread", Spread, 0.3),
            share.FirstOrDefault(),
            share.LastOrDefault()
        );
    }
}
