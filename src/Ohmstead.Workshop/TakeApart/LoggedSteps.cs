using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>
/// The steps of a type as the log of one unit shows them: what came off, in that order, the minutes that each took, its cup, and what broke.
/// </summary>
public static class LoggedSteps
{
    /// <summary>Fewer steps show no order.</summary>
    private const int LeastSteps = 2;

    /// <summary>For a step that was logged after a pause, or with the one before it [min]. Common practice, no source.</summary>
    private const double UsualMinutes = 3;

    /// <summary>Entered in one go with the step before, so that nothing is known of its time [min].</summary>
    private const double LeastMinutes = 0.1;

    /// <summary>A step that no sheet has breaks something in so many of 100 [%]: common practice, no source.</summary>
    private const double UsualBreakPercent = 3;

    /// <summary>The usual chance counts for so many units beside the one that was logged. Common practice, no source.</summary>
    private const int UsualUnits = 9;

    /// <summary>Each step that came off; empty where the log shows no order.</summary>
    /// <param name="sheet">The type's sheet: a step that it has already keeps its id, and what it lifts.</param>
    public static ImmutableArray<LoggedStep> Of(BenchUnit unit, TypeSheet sheet)
    {
        var (steps, taken, way) = (new List<LoggedStep>(), new HashSet<string>(StringComparer.Ordinal), "");
        var back = Minutes<PutBack>(unit, b => b.Step);
        var broke = unit.All<PieceNoted>().Where(p => p.Fact.Fate == PieceFate.Broke).ToLookup(p => p.Fact.Step, p => p.Fact);
        foreach (var (_, fact, minutes) in LoggedMinutes.Of(unit))
        {
            if (fact is not TakenOff off || steps.Exists(s => s.Logged == off.Step))
                continue;
            var known = KnownAs(off, sheet, taken);
            ImmutableArray<string> after = [.. (known?.After ?? []).Where(taken.Contains)];
            if (way.Length > 0 && !after.Contains(way))
                after = after.Insert(0, way);
            var took = minutes is { } m && m >= LeastMinutes ? m : known?.MinutesOut ?? UsualMinutes;
            var id = known?.Id ?? FreeId(off, sheet, taken);
            var step = (known ?? new(id, "", [], [], 0, 0, UsualBreakPercent, 0, [], "", 0)) with
            {
                Title = Sentences.Large(off.Title ?? known?.Title ?? PartNames.Step(sheet, off.Step)),
                After = after,
                AfterAny = [],
                MinutesOut = Rounded(took),
                MinutesIn = Rounded(back.GetValueOrDefault(off.Step, known?.MinutesIn ?? took)),
                Cup = off.Cup,
            };
            steps.Add(new(off.Step, Learned(step, off, [.. broke[off.Step]]), known?.Title ?? "", broke[off.Step].Sum(p => p.Pieces)));
            taken.Add(id);
            // What comes off for its own sake opens no way; everything else does.
            if (known is null || !ReachFor.PartsOf(known.Id, sheet).Any())
                way = id;
        }
        return steps.Count < LeastSteps ? [] : [.. steps];
    }

    /// <summary>The type's steps with these in the place of its own: first what was logged, then what nobody has taken off yet.</summary>
    public static ImmutableArray<TakeApartStep> In(TypeSheet sheet, ImmutableArray<LoggedStep> logged) =>
        [.. logged.Select(l => l.Step), .. sheet.TakeApart.Where(s => logged.All(l => l.Step.Id != s.Id))];

    private static Dictionary<string, double> Minutes<T>(BenchUnit unit, Func<T, string> step)
        where T : Fact
    {
        var minutes = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var (_, fact, took) in LoggedMinutes.Of(unit))
            if (fact is T it && took is { } m && m >= LeastMinutes)
                minutes.TryAdd(step(it), m);
        return minutes;
    }

    /// <summary>The step of the sheet that it is: by its id, else by the words that it was logged under.</summary>
    private static TakeApartStep? KnownAs(TakenOff off, TypeSheet sheet, HashSet<string> taken)
    {
        var free = sheet.TakeApart.Where(s => !taken.Contains(s.Id)).ToList();
        return free.FirstOrDefault(s => s.Id == off.Step)
            ?? (
                off.Title is { } title
                    ? free.Where(s => StepWords.Alike(s.Title, title) > 0).MaxBy(s => StepWords.Alike(s.Title, title))
                    : null
            );
    }

    private static string FreeId(TakenOff off, TypeSheet sheet, HashSet<string> taken)
    {
        var words = StepWords.Id(off.Title ?? PartNames.Step(sheet, off.Step));
        for (var n = 1; ; n++)
        {
            var id = n == 1 ? words : $"{words}-{ValueText.Plain(n)}";
            if (!taken.Contains(id) && sheet.TakeApart.All(s => s.Id != id))
                return id;
        }
    }

    /// <summary>With what was remembered of it, what broke, and the chance of that.</summary>
    private static TakeApartStep Learned(TakeApartStep step, TakenOff off, ImmutableArray<PieceNoted> broke)
    {
        var said = broke.Select(p => $"{Counted.Of(p.Pieces, "piece")} broke{(p.Words.Length > 0 ? $": {p.Words}" : "")}.");
        return step with
        {
            BreakPercent = Rounded(((step.BreakPercent * UsualUnits) + (broke.IsEmpty ? 0 : 100)) / (UsualUnits + 1)),
            Trick = string.Join(" ", said.Prepend(off.Words.Length > 0 ? Sentences.Whole(off.Words) : step.Trick).Where(w => w.Length > 0)),
        };
    }

    private static double Rounded(double value) => Math.Round(value, 1);
}

/// <summary>A step that came off a unit, as a step of its type.</summary>
/// <param name="Logged">Its id in the log.</param>
/// <param name="Step">The type's step.</param>
/// <param name="Replaces">Title of the sheet's own step that it is; empty for a new one.</param>
/// <param name="Broke">Pieces that broke.</param>
public sealed record LoggedStep(string Logged, TakeApartStep Step, string Replaces, int Broke);
