using System.Text;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Perf.Experiments.Limits;

namespace Ohmstead.Perf.Experiments.Heat;

/// <summary>How good the forecast of a heat run is after 20, 40, 80 and 120 minutes, over simulated runs.</summary>
internal static class HeatExperiment
{
    /// <summary>Runs of the page's table.</summary>
    public const int FullRuns = 200;

    private const double Limit = 65;
    private const double FarKelvin = 20;

    /// <summary>Minutes of the last switch-off, of the readings in between, and the most mean error of the final rise [K].</summary>
    public static IReadOnlyList<(double End, double Every, double MostError)> Stages { get; } =
    [(20, 5, 10), (40, 5, 8), (80, 10, 4), (120, 15, 2.5)];

    public static IReadOnlyList<Asked> Run(int runs, int seed, StringBuilder page)
    {
        page.AppendLine(
            "| after | mean error of the final rise, K | band holds | its width, of the rise | decided of those 20 K off | wrong | mean error at switch-off, K | band holds | its width, K |"
        );
        page.AppendLine("|---|---|---|---|---|---|---|---|---|");
        var (asked, all) = (new List<Asked>(), new List<HeatOutcome>());
        foreach (var (end, every, mostError) in Stages)
        {
            var outcomes = Enumerable.Range(0, runs).Select(n => One(seed + n, end, every)).ToList();
            all.AddRange(outcomes);
            page.AppendLine(
                FormattableString.Invariant(
                    $"| {end} min | {outcomes.Average(o => o.FinalError):0.0} | {Percent(outcomes, o => o.FinalHolds):0} % | {100 * outcomes.Average(o => o.FinalWidthShare):0} % | {Decided(outcomes):0} % | {outcomes.Count(o => o.IsWrong)} | {outcomes.Average(o => o.OffError):0.00} | {Percent(outcomes, o => o.OffHolds):0} % | {outcomes.Average(o => o.OffWidth):0.0} |"
                )
            );
            asked.Add(
                Asked.AtMost(
                    FormattableString.Invariant($"heat run, {end} min: mean error of the final rise, K"),
                    outcomes.Average(o => o.FinalError),
                    mostError
                )
            );
        }
        asked.Add(Asked.AtLeast("heat run: the band of the final rise holds, %", Percent(all, o => o.FinalHolds), 80));
        asked.Add(Asked.AtMost("heat run: its mean width, % of the rise", 100 * all.Average(o => o.FinalWidthShare), 50));
        asked.Add(Asked.AtMost("heat run: wrong “may stop”, % of all", Percent(all, o => o.IsWrong), 1.25));
        asked.Add(Asked.AtLeast("heat run: decided of those 20 K from the limit, %", Decided(all), 60));
        asked.Add(Asked.AtMost("heat run: mean error at switch-off, K", all.Average(o => o.OffError), 1));
        asked.Add(Asked.AtLeast("heat run: the band at switch-off holds, %", Percent(all, o => o.OffHolds), 80));
        asked.Add(Asked.AtMost("heat run: its mean width, K", all.Average(o => o.OffWidth), 6));
        page.AppendLine($"\n{Asked.Heading}");
        foreach (var figure in asked)
            page.AppendLine(figure.Row());
        return asked;
    }

    private static HeatOutcome One(int seed, double end, double every)
    {
        // The meter's repeat by turns, so that both are seen at every stage.
        var run = new SimulatedRun(new Random(seed), seed % 2 == 0 ? 0.1 : 0.25);
        var (question, atOff, final) = run.Take([.. Enumerable.Range(1, 100).Select(n => n * every).Where(m => m < end)], end, Limit);
        var answer = (HeatRunAnswer)QuestionFile.Read(question, null).Question!.Answer();
        return new(answer, atOff, final, Limit);
    }

    private static double Percent(IReadOnlyCollection<HeatOutcome> outcomes, Func<HeatOutcome, bool> what) =>
        100.0 * outcomes.Count(what) / outcomes.Count;

    private static double Decided(IReadOnlyCollection<HeatOutcome> outcomes) =>
        outcomes.Where(o => Math.Abs(o.FinalKelvin - Limit) >= FarKelvin).ToList() is { Count: > 0 } far
            ? Percent(far, o => o.Answer.MayStop != "go on")
            : double.NaN;
}

/// <summary>One answer beside what was true.</summary>
internal sealed record HeatOutcome(HeatRunAnswer Answer, double AtOffKelvin, double FinalKelvin, double LimitKelvin)
{
    public double FinalError => Math.Abs(Answer.Final.RiseKelvin - FinalKelvin);

    public bool FinalHolds => FinalKelvin >= Answer.Final.LowKelvin && FinalKelvin <= Answer.Final.HighKelvin;

    public double FinalWidthShare => (Answer.Final.HighKelvin - Answer.Final.LowKelvin) / FinalKelvin;

    public double OffError => Math.Abs(Answer.AtOff.RiseKelvin - AtOffKelvin);

    public bool OffHolds => AtOffKelvin >= Answer.AtOff.LowKelvin && AtOffKelvin <= Answer.AtOff.HighKelvin;

    public double OffWidth => Answer.AtOff.HighKelvin - Answer.AtOff.LowKelvin;

    public bool IsWrong =>
        (Answer.MayStop == "below" && FinalKelvin > LimitKelvin) || (Answer.MayStop == "above" && FinalKelvin < LimitKelvin);
}
