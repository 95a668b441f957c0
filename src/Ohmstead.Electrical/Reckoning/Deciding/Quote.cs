using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// <c>quote</c>: how long a job takes and what it comes to, from the shop's own minutes of each step. What can be summed is
/// exact; the shares of jobs come from seeded draws (docs/methods/deciding.md).
/// </summary>
/// <param name="Correlation">A unit that is slow in one step is slow in the next; 0 or more, below 1.</param>
/// <param name="ApproveAbove">Above this bill the shop asks first; null for no such line.</param>
/// <param name="WorthUpTo">What the unit is worth to its owner; null for no such line.</param>
public sealed record Quote(
    ImmutableArray<QuotedStep> Steps,
    double Correlation,
    ImmutableArray<QuotedPart> Parts,
    decimal RatePerHour,
    ImmutableArray<QuotedStop> Stops,
    decimal? ApproveAbove,
    decimal? WorthUpTo,
    int Draws,
    int Seed
) : Question
{
    private const int MostSteps = 200;
    private const int MostDraws = 2_000_000;
    private const double MostNumbers = 30_000_000;

    /// <summary>Reads its fields.</summary>
    public static Quote Read(QuestionFields fields)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var steps = fields.List("steps", f => QuotedStep.Read(f, ids), most: MostSteps);
        var parts = fields.OptionalList("parts", QuotedPart.Read, MostSteps);
        var draws = fields.Whole("draws", 1000, MostDraws, 200_000);
        if ((double)draws * (steps.Length + parts.Length) > MostNumbers)
            fields.Report("draws", "times the steps and parts is too much to draw", "200000 are enough for half a percent");
        return new(
            steps,
            fields.Number("correlation", new NumberRange(0, 1, WithoutHigh: true), 0.4),
            parts,
            fields.Money("ratePerHour", 50),
            fields.OptionalList("stops", f => QuotedStop.Read(f, [.. steps.Select(s => s.Id)]), MostSteps),
            fields.OptionalMoney("approveAbove"),
            fields.OptionalMoney("worthUpTo"),
            draws,
            fields.Whole("seed", int.MinValue, int.MaxValue, 1)
        );
    }

    /// <inheritdoc/>
    public override QuoteAnswer Answer()
    {
        var laws = Steps.Select(s => s.Minutes()).ToImmutableArray();
        var job = new JobForecast(this, laws);
        var drawn = JobDraws.Of(this, laws);
        return new QuoteAnswer(
            [.. Steps.Zip(laws, (s, law) => new QuoteStep(s.Id, law.MedianMinutes, law.P90Minutes, law.LogSpread, s.Records.Length))],
            job.FinishedPercent > 0
                ? new(Drawn.Of(drawn.WholeMinutes, job.WholeMinutes), Drawn.Of(drawn.WholeBills, job.WholeBill))
                : QuoteRange.Nothing,
            new(Drawn.Of(drawn.AllMinutes, job.AllMinutes), Drawn.Of(drawn.AllBills, job.AllBill)),
            [.. Stops.Zip(job.StopPercents, (stop, percent) => new QuoteStop(stop.After, percent, stop.Fee))],
            job.FinishedPercent,
            drawn.PercentAbove(ApproveAbove),
            drawn.PercentAbove(WorthUpTo),
            Draws
        )
        {
            Words =
            [
                "Half of such jobs take less than P50, nine of ten less than P90.",
                .. Reasons.If(
                    "The chances that parts and steps are needed, and of stops, are yours to set: common practice, no source.",
                    Stops.Length > 0 || Parts.Any(p => p.Percent < 100)
                ),
            ],
            Outside =
            [
                "Minutes are those at the bench. Waiting for parts or glue is left out.",
                "Few records make a wide range. It narrows as jobs are logged.",
            ],
        };
    }
}

/// <summary>A step of a job: what was believed of its minutes, and what earlier jobs took.</summary>
/// <param name="PriorMinutes">The usual minutes; above 0.</param>
/// <param name="PriorSpread">Of the logarithm.</param>
/// <param name="PriorWorth">How many records that belief is worth.</param>
/// <param name="Percent">Chance that the step is needed.</param>
public sealed record QuotedStep(
    string Id,
    double PriorMinutes,
    double PriorSpread,
    double PriorWorth,
    ImmutableArray<double> Records,
    double Percent
)
{
    /// <summary>How wide a belief about minutes is without a record: the spread of the logarithm.</summary>
    public const double UsualSpread = 0.5;

    /// <summary>How many records it is worth.</summary>
    public const double UsualWorth = 2;

    internal static QuotedStep Read(QuestionFields fields, HashSet<string> ids)
    {
        var (id, prior) = (fields.NewId("id", ids), fields.NeededPart("prior", "{ \"minutes\": 20 }"));
        return new(
            id,
            prior?.Number("minutes", MinutesRange) ?? 1,
            prior?.Number("spread", new NumberRange(0, 5), UsualSpread) ?? UsualSpread,
            prior?.Number("worth", NumberRange.Positive, UsualWorth) ?? UsualWorth,
            fields.Numbers("records", MinutesRange, []),
            fields.Number("percent", NumberRange.Percent, 100)
        );
    }

    private static NumberRange MinutesRange { get; } = new(0, 1e6, WithoutLow: true);

    /// <summary>
    /// The next job's minutes: log-normal, its centre and spread those of a normal–inverse-gamma belief after the records, the
    /// predictive taken as normal (key murphy-conjugate).
    /// </summary>
    public MinutesLaw Minutes()
    {
        var n = Records.Length;
        var (m0, k, v) = (Math.Log(PriorMinutes), PriorWorth + n, (2 * PriorWorth) + n);
        var sum = Records.Sum(Math.Log);
        var mean = n > 0 ? sum / n : m0;
        var squares = Records.Sum(r => (Math.Log(r) - mean) * (Math.Log(r) - mean));
        var variance = ((2 * PriorWorth * PriorSpread * PriorSpread) + squares + (PriorWorth * n / k * (mean - m0) * (mean - m0))) / v;
        return new(((PriorWorth * m0) + sum) / k, Math.Sqrt(variance * (1 + (1 / k))));
    }
}

/// <summary>A log-normal law of minutes.</summary>
/// <param name="LogCentre">ln of the median.</param>
/// <param name="LogSpread">Standard deviation of the logarithm.</param>
public readonly record struct MinutesLaw(double LogCentre, double LogSpread)
{
    /// <summary>Nine of ten of a normal law lie below so many standard deviations above its centre.</summary>
    private const double NineOfTen = 1.28155;

    /// <summary>Half of the jobs take less.</summary>
    public double MedianMinutes => Math.Exp(LogCentre);

    /// <summary>Nine of ten jobs take less.</summary>
    public double P90Minutes => Math.Exp(LogCentre + (NineOfTen * LogSpread));

    /// <summary>On average, more than the median.</summary>
    public double MeanMinutes => Math.Exp(LogCentre + (LogSpread * LogSpread / 2));
}

/// <summary>A part that the job may need.</summary>
public sealed record QuotedPart(string Id, decimal Price, double Percent)
{
    internal static QuotedPart Read(QuestionFields fields) =>
        new(fields.Word("id"), fields.Money("price"), fields.Number("percent", NumberRange.Percent, 100));
}

/// <summary>A point at which the job may end: the bill is the fee alone then.</summary>
/// <param name="After">The step after which it is decided.</param>
/// <param name="Percent">Of the jobs that come so far.</param>
public sealed record QuotedStop(string After, double Percent, decimal Fee)
{
    internal static QuotedStop Read(QuestionFields fields, ImmutableArray<string> steps) =>
        new(fields.KnownId("after", steps, "step"), fields.Number("percent", NumberRange.Percent), fields.Money("fee"));
}
