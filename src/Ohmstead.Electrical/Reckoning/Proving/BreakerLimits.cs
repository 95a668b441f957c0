namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>Figures of a breaker test that a shop may edit; common practice, no source.</summary>
/// <param name="AmpsPercent">Limit of error of the amps.</param>
/// <param name="StopwatchSeconds">Limit of error of the time.</param>
/// <param name="SamePercent">So near to the cold trip the next one counts as from cold.</param>
/// <param name="HoldSeconds">No test is held longer.</param>
/// <param name="SlowSeconds">Slower than this at the test amps is slow.</param>
/// <param name="ShortAmps">What a dead short drives.</param>
/// <param name="ShortSeconds">Slower than this on a short is slow.</param>
public sealed record BreakerLimits(
    double AmpsPercent,
    double StopwatchSeconds,
    double SamePercent,
    double HoldSeconds,
    double SlowSeconds,
    double ShortAmps,
    double ShortSeconds
)
{
    /// <summary>Reads their fields.</summary>
    internal static BreakerLimits Read(QuestionFields fields) =>
        new(
            fields.Number("ampsPercent", NumberRange.Percent, 1),
            fields.Number("stopwatchSeconds", NumberRange.NotNegative, 0.5),
            fields.Number("samePercent", NumberRange.Percent, 5),
            fields.Number("holdSeconds", NumberRange.Positive, 90),
            fields.Number("slowSeconds", NumberRange.NotNegative, 60),
            fields.Number("shortAmps", NumberRange.Positive, 55),
            fields.Number("shortSeconds", NumberRange.NotNegative, 15)
        );
}
