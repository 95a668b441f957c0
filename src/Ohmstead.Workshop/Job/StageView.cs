using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Job;

/// <summary>A stage of the job: what is done in it and what is open.</summary>
/// <param name="IsClosed">True when it is done: said to be by hand where only a person knows, and by what the journal holds where that says it.</param>
/// <param name="Done">What is done, in words.</param>
/// <param name="Open">What is open, in words; empty when nothing is.</param>
public sealed record StageView(Stage Stage, bool IsClosed, string Done, string Open)
{
    /// <summary>True where a person says that it is done. What rests on a check or on parts is done when these are.</summary>
    public bool IsByHand => Stage is Stage.LookOver or Stage.Readings or Stage.Findings;

    /// <summary>Why it cannot be marked as done; empty when it can.</summary>
    public string Locked { get; init; } = "";

    /// <summary>Where a unit stands: the first stage with something open, else the first that is not done; null when it was handed back.</summary>
    public static StageView? Here(BenchUnit unit, ImmutableArray<StageView> stages) =>
        unit.HandedBack is not null
            ? null
            : stages.FirstOrDefault(s => !s.IsClosed && s.Open.Length > 0) ?? stages.FirstOrDefault(s => !s.IsClosed);

    /// <summary>The stages in their order.</summary>
    /// <param name="sheet">The unit's own type sheet; null while its type is not known.</param>
    /// <param name="checks">Checks that have not passed.</param>
    public static ImmutableArray<StageView> All(BenchUnit unit, TypeSheet? sheet, Shop shop, ImmutableArray<ShutGate> checks)
    {
        var marked = unit.ClosedStages;
        StageView Make(Stage stage, (string Done, string Open) words) => new(stage, marked.Contains(stage), words.Done, words.Open);
        return
        [
            Make(Stage.LookOver, LookOverWords(LookOverState.Of(unit, sheet, shop), sheet)),
            Make(Stage.Readings, ReadingWords(unit, sheet)) with
            {
                Locked = checks.IsEmpty
                    ? ""
                    : $"{Counted.Of(checks.Length, "check")} not passed: {string.Join("; ", checks.Select(c => c.Gate.Title))}",
            },
            Make(Stage.Findings, FindingWords(unit)),
            Apart(unit, sheet),
            Wiring(unit, sheet),
            Tests(TestList.Of(unit, sheet, shop)),
            Papers(unit),
        ];
    }

    private static (string, string) LookOverWords(LookOverState state, TypeSheet? sheet)
    {
        var done = new List<string>();
        if (state.Signs.Length > 0)
            done.Add($"{Counted.Share(state.Signs.Count(s => s.Answer is not null), state.Signs.Length, "symptom")} asked");
        if (state.Parts.Length > 0)
            done.Add($"{Counted.Share(state.Parts.Count(p => p.Noted is not null), state.Parts.Length, "part")} looked at");
        done.Add(Counted.Of(state.Photos.Length, "photo"));
        var open = new List<string>();
        if (sheet is null)
            open.Add("its type is not known");
        if (state.SignsLeft > 0)
            open.Add(Counted.Of(state.SignsLeft, "symptom"));
        if (state.PartsLeft > 0)
            open.Add(Counted.Of(state.PartsLeft, "part"));
        var replace = state.ToReplace.Select(i => i.Title).ToList();
        if (replace.Count > 0)
            done.Add($"to replace: {string.Join(", ", replace)}");
        return (string.Join("; ", done), string.Join(", ", open));
    }

    private static (string, string) ReadingWords(BenchUnit unit, TypeSheet? sheet)
    {
        if (sheet is null)
            return ("none taken", "name its type first");
        var taken = unit.CurrentReadings.Select(r => r.Fact.ReadingId).ToHashSet(StringComparer.Ordinal);
        var closedCase = sheet.Readings.Where(r => !r.IsOpenCase).ToList();
        var left = closedCase.Count(r => !taken.Contains(r.Id));
        var done = Counted.Of(taken.Count, "reading") + " taken";
        if (unit.LastChange > 0)
            done += " since a part was changed";
        return (done, left == 0 ? "" : $"{Counted.Of(left, "reading")} with the case closed");
    }

    private static (string, string) FindingWords(BenchUnit unit)
    {
        var (confirmed, changed, open) = (unit.Confirmed.Count(), unit.All<PartChanged>().Count(), unit.Unrepaired.Count());
        return (
            confirmed + changed == 0
                ? "nothing marked"
                : $"{(confirmed == 0 ? "nothing marked as found" : $"{Counted.Of(confirmed, "fault")} found")}; {Counted.Of(changed, "part")} changed",
            open > 0 ? $"{Counted.Of(open, "repair")} to do"
            : !unit.CurrentReadings.Any() && confirmed == 0 ? "readings to go by"
            : ""
        );
    }

    private static StageView Apart(BenchUnit unit, TypeSheet? sheet)
    {
        if (sheet is null || ApartState.Of(unit, sheet) is not { IsBegun: true } apart)
            return new(Stage.TakingApart, false, "not opened", "");
        var back = apart.Back.Length > 0 ? $", {Counted.Of(apart.Back.Length, "step")} put back" : "";
        return new(
            Stage.TakingApart,
            apart.Off.IsEmpty,
            $"{Counted.Of(apart.Off.Length + apart.Back.Length, "step")} done{back}",
            apart.Off.IsEmpty ? "" : $"{Counted.Of(apart.Off.Length, "step")} to put back"
        );
    }

    private static StageView Wiring(BenchUnit unit, TypeSheet? sheet)
    {
        if (sheet is null)
            return new(Stage.Wiring, false, "nothing recorded", "");
        var (found, left) = (WiringRecord.Of(unit, sheet, WiringState.Found), WiringRecord.Of(unit, sheet, WiringState.Left));
        var done =
            found.Joints.IsEmpty && left.Joints.IsEmpty
                ? "nothing recorded"
                : $"{Counted.Of(found.Joints.Length, "joint")} as found, {Counted.Of(left.Joints.Length, "joint")} as left";
        var hasPassed = WiringCheck.Standing(unit, sheet) is not null;
        var wrong = WrongEnd.Of(unit, sheet).Length;
        return new(
            Stage.Wiring,
            hasPassed && WiringCheck.IsOpen(unit, sheet),
            hasPassed ? $"{done}; the wiring check has passed" : done,
            WiringCheck.IsOpen(unit, sheet) ? ""
                : wrong > 0 ? $"{Counted.Of(wrong, "wire end")} on the wrong terminal"
                : "the wiring check"
        );
    }

    private static StageView Tests(ImmutableArray<BenchTest> tests)
    {
        var (taken, left, due) = (tests.Count(t => t.IsTaken), tests.Count(t => t.IsLeftOut), tests.Count(t => t.IsDue));
        var done = taken == 0 ? "none taken" : $"{Counted.Of(taken, "test")} taken";
        // What was left out with a reason is asked no more; the stage is not done by it, and says so.
        return new(
            Stage.Tests,
            taken > 0 && due + left == 0,
            left == 0 ? done : $"{done}, {ValueText.Plain(left)} not taken, each with its reason",
            due > 0 ? Counted.Of(due, "test") : ""
        );
    }

    private static StageView Papers(BenchUnit unit)
    {
        var papers = unit.All<PaperMade>().Select(p => p.Fact.Paper.Replace('-', ' ')).Distinct().ToList();
        var done = papers.Count == 0 ? "none made" : $"made: {string.Join(", ", papers)}";
        return unit.HandedBack is { } back
            ? new(Stage.Papers, true, $"{FactWords.ReturnTitle(back.Manner)}; {done}", "")
            : new(Stage.Papers, false, done, papers.Contains("service record") ? "to be returned" : "the service record");
    }
}
