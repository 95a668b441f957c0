using System.Collections.Immutable;

namespace Ohmstead.Perf.Experiments.Limits;

/// <summary>
/// What is asked on units that match their sheet: what was measured when the method last became better, and a margin that a change of
/// the last digits does not use up.
/// </summary>
/// <param name="Simulated">On the units read through the circuit simulator.</param>
/// <param name="Own">On the units read through the own solver.</param>
/// <param name="OfSheetOrder">Most minutes of the proposed order, as a share of the sheet's order.</param>
/// <param name="OfShortest">The same, as a share of shortest first.</param>
internal sealed record DiagnosisLimits(ScoreLimits Simulated, ScoreLimits Own, double OfSheetOrder, double OfShortest)
{
    /// <summary>By the name of the sheet.</summary>
    public static ImmutableDictionary<string, DiagnosisLimits> BySheet { get; } =
        new Dictionary<string, DiagnosisLimits>
        {
            ["twin-160"] = new(new(0.80, 2.75), new(0.86, 2.55), 0.65, 0.75),
            ["solo-110"] = new(new(0.93, 1.85), new(0.90, 1.95), 0.61, 0.78),
        }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>What is asked of the proposed order on all sheets together.</summary>
    public static IEnumerable<Asked> OfMinutes(double proposed, double sheetOrder, double shortest) =>
        OfMinutes("both sheets", proposed / sheetOrder, 0.62, proposed / shortest, 0.76);

    /// <summary>What is asked of the proposed order on this sheet.</summary>
    public IEnumerable<Asked> OfMinutes(string sheet, double proposed, double sheetOrder, double shortest) =>
        OfMinutes(sheet, proposed / sheetOrder, OfSheetOrder, proposed / shortest, OfShortest);

    private static IEnumerable<Asked> OfMinutes(
        string sheet,
        double ofSheetOrder,
        double mostOfSheetOrder,
        double ofShortest,
        double mostOfShortest
    ) =>
        [
            Asked.AtMost($"{sheet}: minutes of the proposed order, share of the sheet's order", ofSheetOrder, mostOfSheetOrder),
            Asked.AtMost($"{sheet}: minutes of the proposed order, share of shortest first", ofShortest, mostOfShortest),
        ];
}

/// <summary>What is asked of a score.</summary>
internal sealed record ScoreLimits(double Precision, double Loss)
{
    /// <summary>Most that the worst tenth may lie beyond chance.</summary>
    private const double WorstTenth = 0.03;

    /// <summary>Least share of the sure answers that are true.</summary>
    private const double SureAndTrue = 0.95;

    /// <summary>Each figure beside its limit.</summary>
    public IEnumerable<Asked> Of(string units, Score score) =>
        [
            Asked.AtLeast($"{units}: mean average precision", score.MeanAveragePrecision, Precision),
            Asked.AtMost($"{units}: log loss", score.LogLoss, Loss),
            Asked.AtMost($"{units}: worst tenth beyond chance", score.WorstCalibration, WorstTenth),
            Asked.AtLeast($"{units}: sure answers that are true", score.Sure.True / (double)score.Sure.Count, SureAndTrue),
        ];
}
