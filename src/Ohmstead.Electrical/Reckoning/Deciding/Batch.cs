using Ohmstead.Electrical.Reckoning.Probability;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// <c>batch</c>: do the parts of one batch fail more than the others, by luck or not, and how many more will come back
/// (docs/methods/deciding.md).
/// </summary>
/// <param name="PriorFailed">Failures that are taken to have been seen before any were.</param>
/// <param name="PriorYears">Unit-years in which.</param>
/// <param name="Factor">How many times worse than the others counts.</param>
/// <param name="KnownPercent">The share that is known to fail; null where nothing is known.</param>
/// <param name="BatchesLookedAt">One that was picked out of so many looks bad more easily.</param>
/// <param name="StillOut">Parts of the batch that still work.</param>
public sealed record Batch(
    FittedParts Parts,
    FittedParts Others,
    double PriorFailed,
    double PriorYears,
    double Factor,
    double? KnownPercent,
    int BatchesLookedAt,
    double StillOut,
    double AheadYears,
    double SuspectPercent,
    double WatchPercent
) : Question
{
    /// <summary>Reads its fields.</summary>
    public static Batch Read(QuestionFields fields)
    {
        var (parts, others, prior) = (FittedParts.Read(fields, "batch"), FittedParts.Read(fields, "others"), fields.Part("prior"));
        return new(
            parts,
            others,
            prior?.Number("failed", NumberRange.Positive, 0.5) ?? 0.5,
            prior?.Number("years", NumberRange.Positive, 5) ?? 5,
            fields.Number("factor", NumberRange.Positive, 2),
            fields.Optional("knownPercent", NumberRange.Percent),
            fields.Whole("batchesLookedAt", 1, 1_000_000, 1),
            fields.Number("stillOut", NumberRange.NotNegative, parts.Fitted - parts.Failed),
            fields.Number("aheadYears", NumberRange.NotNegative, 1),
            fields.Number("suspectPercent", NumberRange.Percent, 90),
            fields.Number("watchPercent", NumberRange.Percent, 60)
        );
    }

    /// <inheritdoc/>
    public override BatchAnswer Answer()
    {
        var luck =
            100 * CountLaws.HypergeometricAtLeast(Parts.Failed, Parts.Fitted, Parts.Failed + Others.Failed, Parts.Fitted + Others.Fitted);
        var (a1, b1) = (PriorFailed + Parts.Failed, PriorYears + Parts.Years);
        var (a2, b2) = (PriorFailed + Others.Failed, PriorYears + Others.Years);
        // Of two gamma variables the share of one is a beta variable.
        var worse = 100 * BetaFunction.Below(b2 / ((Factor * b1) + b2), a2, a1);
        var ahead = StillOut * AheadYears;
        return new BatchAnswer(
            luck,
            Math.Min(100, luck * BatchesLookedAt),
            KnownPercent is { } known ? 100 * CountLaws.BinomialAtLeast(Parts.Failed, Parts.Fitted, known / 100) : null,
            a1 / b1,
            a2 / b2,
            worse,
            StillOut,
            ahead * a1 / b1,
            100 * (1 - Math.Pow(b1 / (b1 + ahead), a1)),
            worse >= SuspectPercent ? "suspect"
                : worse >= WatchPercent ? "watch"
                : "nothing stands out"
        )
        {
            Words =
            [
                worse >= SuspectPercent ? "Suspect batch. Call the owners before it fails on them."
                : worse >= WatchPercent ? "Watch this batch."
                : "Nothing unusual in this batch.",
                "The limits of a suspect batch and the failures taken as seen before are common practice, no source.",
            ],
            Outside = ["Failure is taken to be as likely in any year of use. Parts that wear out fail later than this says."],
        };
    }
}

/// <summary>Parts that were fitted, how many of them failed, and the unit-years that they were in use.</summary>
public sealed record FittedParts(int Fitted, int Failed, double Years)
{
    private const int Most = 10_000_000;

    internal static FittedParts Read(QuestionFields fields, string name)
    {
        if (fields.NeededPart(name, "{ \"fitted\", \"failed\", \"years\" }") is not { } part)
            return new(1, 0, 1);
        var (fitted, failed) = (part.Whole("fitted", 0, Most), part.Whole("failed", 0, Most));
        var counts = new NumberRange(0, Most);
        if (failed > fitted && part.Holds("fitted", counts) && part.Holds("failed", counts))
            part.Report("failed", "is above fitted", "no more can fail than were fitted");
        return new(fitted, Math.Min(failed, fitted), part.Number("years", NumberRange.NotNegative));
    }
}

/// <summary>What <c>batch</c> answers.</summary>
/// <param name="ChanceByLuckPercent">So many or more in this batch if all failures were dealt out blindly (Fisher, one-sided).</param>
/// <param name="ChanceByLuckAllBatchesPercent">The same for the worst of all batches looked at (Bonferroni).</param>
/// <param name="ChanceAgainstKnownPercent">So many or more if each fails with the known percent; null where none is known.</param>
/// <param name="BatchPerYear">Failures for each year of a part in use.</param>
/// <param name="ChanceWorseByFactorPercent">That this batch's rate is above the factor times the others'.</param>
/// <param name="ChanceOfOneMorePercent">At least one more in the years ahead.</param>
/// <param name="Verdict">suspect, watch, or nothing stands out.</param>
public sealed record BatchAnswer(
    double ChanceByLuckPercent,
    double ChanceByLuckAllBatchesPercent,
    double? ChanceAgainstKnownPercent,
    double BatchPerYear,
    double OthersPerYear,
    double ChanceWorseByFactorPercent,
    double StillOut,
    double ExpectedMore,
    double ChanceOfOneMorePercent,
    string Verdict
) : Answer;
