using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.Reckoning.Standards;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Testing;

/// <summary>A timed breaker against its limit: its seconds at the amps of the limit, by the curve through its trips.</summary>
internal static class BreakerCheck
{
    public static TestResult Of(BenchTest test, TestBound limit, BenchUnit unit, TypeSheet sheet, Shop shop)
    {
        var breaker = sheet.Elements.OfType<Resistive>().First(e => e.Id == test.About);
        var last = unit.All<BreakerTimed>().Last(b => b.Fact.Breaker == test.About && b.Fact.Why.Length == 0).Fact;
        var plan = BreakerPlan.Of(unit, sheet, breaker, BreakerPlan.TestAmps(breaker), shop);
        var read = TestWords.Timed(last);
        if (!last.Opened)
            return Shut(test, limit, last, plan, BreakerPlan.Of(unit, sheet, breaker, last.Amps, shop).Expected.Seconds);
        if (plan.Misfit.Length > 0)
            return new(test, limit, read, TestEnd.NotJudged, [$"Not judged. {plan.Misfit}"], plan.Question);
        var (at, words) = (plan.Expected, plan.Answer.Words.Skip(1).ToImmutableArray());
        var end = TestEnd.Fail;
        if (double.IsFinite(at.Seconds))
        {
            var spread = (at.HighSeconds - at.LowSeconds) / 2 / Math.Sqrt(3);
            var (verdict, _) = TestQuestion.Verdict(limit, at.Seconds, spread).Ask<VerdictAnswer>();
            (end, words) = (TestResult.EndOf(verdict!.Verdict), [.. verdict.Words.Take(2), .. words]);
        }
        else
            words = ["Fail: at these amps it never opens.", .. words];
        if (plan.Answer.Verdict == "leave, add outside")
            words = words.Add($"For the one outside: {ResetType.All[2].Does}");
        return new(test, limit, read, plan.Answer.Verdict == "renew" ? TestEnd.Fail : end, words, plan.Question)
        {
            IsOfDanger = plan.Answer.Why.Contains("slow on a short"),
        };
    }

    /// <summary>It did not open until the load was switched off; at some amps it is not meant to.</summary>
    private static TestResult Shut(BenchTest test, TestBound? limit, BreakerTimed last, BreakerPlan plan, double meantSeconds) =>
        double.IsFinite(meantSeconds)
            ? new(
                test,
                limit,
                TestWords.Timed(last),
                TestEnd.Fail,
                [
                    $"Fail: it did not open in {ValueText.Plain(Math.Round(last.Seconds))} s.",
                    "Replace it, or add a breaker outside. Do not rely on it.",
                ],
                plan.Question
            )
            {
                IsOfDanger = true,
            }
            : new(
                test,
                limit,
                TestWords.Timed(last),
                TestEnd.NotJudged,
                ["Not judged: it is not meant to open at so few amps. Time it at more."],
                plan.Question
            );
}
