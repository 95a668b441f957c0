using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Units;

/// <summary>A stage of the job: what is done in it and what is open.</summary>
/// <param name="IsClosed">True when it was said to be done.</param>
/// <param name="Done">What is done, in words.</param>
/// <param name="Open">What is open, in words; empty when nothing is.</param>
public sealed record StageView(Stage Stage, bool IsClosed, string Done, string Open)
{
    /// <summary>The stages in their order.</summary>
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
            Make(Stage.TakingApart, ApartWords(unit, sheet)),
            Make(Stage.Wiring, WiringWords(unit, sheet)),
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

    private static (string, string) ApartWords(BenchUnit unit, TypeSheet? sheet)
    {
        if (sheet is null || ApartState.Of(unit, sheet) is not { IsBegun: true } apart)
            return ("not opened", "");
        var back = apart.Back.Length > 0 ? $", {Counted.Of(apart.Back.Length, "step")} put back" : "";
        return (
            $"{Counted.Of(apart.Off.Length + apart.Back.Length, "step")} done{back}",
            apart.Off.IsEmpty ? "" : $"{Counted.Of(apart.Off.Length, "step")} to put back"
        );
    }

    private static (string, string) WiringWords(BenchUnit unit, TypeSheet? sheet)
    {
        if (sheet is null)
            return ("nothing recorded", "");
        var (found, left) = (WiringRecord.Of(unit, sheet, WiringState.Found), WiringRecord.Of(unit, sheet, WiringState.Left));
        var done = found.Joints.IsEmpty && left.Joints.IsEmpty
            ? "nothing recorded"
            : $"{Counted.Of(found.Joints.Length, "joint")} as found, {Counted.Of(left.Joints.Length, "joint")} as left";
        return RewireGate.IsOpen(unit, sheet)
            ? (RewireGate.Standing(unit, sheet) is null ? done : $"{done}; the check stands", "")
            : (done, "the check before mains");
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
