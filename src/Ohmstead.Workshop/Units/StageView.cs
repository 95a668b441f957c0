using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Units;

/// <summary>A stage of the job: what is done in it and what is open.</summary>
/// <param name="IsClosed">True when it was said to be done.</param>
/// <param name="Done">What is done, in words.</param>
/// <param name="Open">What is open, in words; empty when nothing is.</param>
public sealed record StageView(Stage Stage, bool IsClosed, string Done, string Open)
{
    /// <summary>The four stages in their order.</summary>
    /// <param name="sheet">The unit's own type sheet; null while its kind is not known.</param>
    public static ImmutableArray<StageView> All(BenchUnit unit, TypeSheet? sheet, Shop shop)
    {
        var closed = unit.All<StageClosed>()
            .GroupBy(s => s.Fact.Stage)
            .Where(g => g.Last().Fact.IsClosed)
            .Select(g => g.Key)
            .ToHashSet();
        StageView Make(Stage stage, (string Done, string Open) words) =>
            new(stage, closed.Contains(stage), words.Done, words.Open);
        return
        [
            Make(Stage.LookOver, LookOverWords(LookOverState.Of(unit, sheet, shop), sheet)),
            Make(Stage.Readings, ReadingWords(unit, sheet)),
            Make(Stage.Findings, FindingWords(unit)),
            Make(Stage.Papers, PaperWords(unit)),
        ];
    }

    private static (string, string) LookOverWords(LookOverState state, TypeSheet? sheet)
    {
        var done = new List<string>();
        if (state.Signs.Length > 0)
            done.Add($"{Share(state.Signs.Length, state.SignsLeft)} questions answered");
        done.Add($"{Share(state.Parts.Length, state.PartsLeft)} parts looked at");
        done.Add(Counted.Of(state.Photos.Length, "photo"));
        var open = new List<string>();
        if (sheet is null)
            open.Add("its kind is not named");
        if (state.SignsLeft > 0)
            open.Add(Counted.Of(state.SignsLeft, "question"));
        if (state.PartsLeft > 0)
            open.Add(Counted.Of(state.PartsLeft, "part"));
        var renew = state.Parts.Where(p => p.Noted?.Decision == Decision.Renew).Select(p => p.Item.Title).ToList();
        if (renew.Count > 0)
            done.Add($"to renew: {string.Join(", ", renew)}");
        return (string.Join("; ", done), string.Join(", ", open));
    }

    private static string Share(int all, int left) => $"{ValueText.Plain(all - left)} of {ValueText.Plain(all)}";

    private static (string, string) ReadingWords(BenchUnit unit, TypeSheet? sheet)
    {
        if (sheet is null)
            return ("none taken", "the kind has to be named first");
        var taken = unit.CurrentReadings.Select(r => r.Fact.ReadingId).ToHashSet(StringComparer.Ordinal);
        var closedCase = sheet.Readings.Where(r => !r.IsOpenCase).ToList();
        var left = closedCase.Count(r => !taken.Contains(r.Id));
        var done = Counted.Of(taken.Count, "reading") + " taken";
        if (unit.LastChange > 0)
            done += " since the circuit was changed";
        return (done, left == 0 ? "" : $"{Counted.Of(left, "reading")} with the case closed");
    }

    private static (string, string) FindingWords(BenchUnit unit)
    {
        var confirmed = unit.All<FindingJudged>()
            .GroupBy(f => (f.Fact.Element, f.Fact.Mode))
            .Select(g => g.Last())
            .Where(f => f.Fact.Judgement == Judgement.Confirmed)
            .ToList();
        var changed = unit.All<PartChanged>().ToList();
        var open = confirmed.Count(f =>
            !changed.Exists(p => p.Fact.Element == f.Fact.Element && p.Entry.Number > f.Entry.Number)
        );
        return (
            $"{Counted.Of(confirmed.Count, "fault")} confirmed; {Counted.Of(changed.Count, "part")} changed",
            open > 0 ? $"{Counted.Of(open, "repair")} to do"
            : !unit.CurrentReadings.Any() && confirmed.Count == 0 ? "readings to go by"
            : ""
        );
    }

    private static (string, string) PaperWords(BenchUnit unit)
    {
        var papers = unit.All<PaperMade>().Select(p => p.Fact.Paper.Replace('-', ' ')).Distinct().ToList();
        return (
            papers.Count == 0 ? "none made" : $"made: {string.Join(", ", papers)}",
            papers.Contains("service record") ? "" : "the service record"
        );
    }
}
