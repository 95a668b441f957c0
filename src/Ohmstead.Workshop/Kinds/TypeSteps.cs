using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;

namespace Ohmstead.Workshop.Kinds;

/// <summary>The take-apart steps of a type, put right: the rest of its text stays as it is.</summary>
public static class TypeSteps
{
    private const double MostMinutes = 10_000;

    /// <summary>The sheet's text with other steps; null where it would no longer be sound.</summary>
    public static string? Put(string text, ImmutableArray<TakeApartStep> steps)
    {
        if (!TypeSheetFile.Read(text).IsSound)
            return null;
        var put = KindText.Put(text, "$.takeApart", TakeApartWriter.Write(steps, text));
        return TypeSheetFile.Read(put).IsSound ? put : null;
    }

    /// <summary>
    /// Puts the steps that a person has put right into the text of a sheet that was drafted anew. Where they cannot all stand on it, each
    /// that can takes the place of the drafted one, or is added.
    /// </summary>
    public static string PutKept(string text, TypeSheet before, TypeSheet drafted)
    {
        var kept = Kept(before, drafted);
        if (Put(text, kept) is { } whole)
            return whole;
        var steps = drafted.TakeApart;
        foreach (var own in kept)
        {
            var at = steps.ToList().FindIndex(s => s.Id == own.Id);
            var with = at < 0 ? steps.Add(own) : steps.SetItem(at, own);
            (steps, text) = Put(text, with) is { } put ? (with, put) : (steps, text);
        }
        return text;
    }

    /// <summary>A step with what was typed, or what is wrong with that.</summary>
    public static (TakeApartStep Step, string Problem) Typed(
        TakeApartStep step,
        string title,
        string minutesOut,
        string minutesIn,
        string percent,
        string cup
    )
    {
        var (took, outProblem) = ShopEdit.Number(minutesOut, 0, MostMinutes);
        var (back, inProblem) = ShopEdit.Number(minutesIn, 0, MostMinutes);
        var (breaks, breakProblem) = ShopEdit.Number(percent, 0, 100);
        var (into, cupProblem) = ShopEdit.Number(cup.Trim().Length == 0 ? "0" : cup, 0, 999);
        var problem =
            title.Trim().Length == 0 ? "Write what comes off."
            : outProblem.Length > 0 ? $"Minutes off: {outProblem}"
            : inProblem.Length > 0 ? $"Minutes back on: {inProblem}"
            : breakProblem.Length > 0 ? $"Breaks: {breakProblem}"
            : cupProblem.Length > 0 ? $"Cup: {cupProblem}"
            : into != Math.Floor(into) ? "Cup: a whole number, 0 for none."
            : "";
        return (
            step with
            {
                Title = title.Trim(),
                MinutesOut = took,
                MinutesIn = back,
                BreakPercent = breaks,
                Cup = problem.Length == 0 ? (int)into : step.Cup,
            },
            problem
        );
    }

    /// <summary>With one step as it is now.</summary>
    public static ImmutableArray<TakeApartStep> With(ImmutableArray<TakeApartStep> steps, TakeApartStep now) =>
        [.. steps.Select(s => s.Id == now.Id ? now : s)];

    /// <summary>Without a step: what came after it comes after what it came after.</summary>
    public static ImmutableArray<TakeApartStep> Without(ImmutableArray<TakeApartStep> steps, string id)
    {
        if (steps.FirstOrDefault(s => s.Id == id) is not { } gone)
            return steps;
        ImmutableArray<string> Instead(ImmutableArray<string> after) =>
            after.Contains(id) ? [.. after.Where(a => a != id).Union(gone.After)] : after;
        return
        [
            .. steps
                .Where(s => s.Id != id)
                .Select(s => s with { After = Instead(s.After), AfterAny = [.. s.AfterAny.Select(Instead).Where(g => g.Length > 0)] }),
        ];
    }

    /// <summary>
    /// The steps that a person has put right, on a sheet that was drafted anew: those of parts that are gone are gone, those of new parts
    /// are added.
    /// </summary>
    public static ImmutableArray<TakeApartStep> Kept(TypeSheet before, TypeSheet drafted)
    {
        var parts = drafted.Elements.Select(e => e.Id).ToHashSet(StringComparer.Ordinal);
        var steps = before.TakeApart;
        foreach (var gone in before.TakeApart.Where(s => ReachFor.PartsOf(s.Id, before).Any() && !ReachFor.PartsOf(s.Id, before).Any(Is)))
            steps = Without(steps, gone.Id);
        steps = [.. steps.Select(s => s with { Lifts = [.. s.Lifts.Where(parts.Contains)] })];
        var ids = steps.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        var added = drafted.TakeApart.Where(s => !ids.Contains(s.Id) && ReachFor.PartsOf(s.Id, drafted).Any(p => !WasThere(p))).ToList();
        var all = ids.Concat(added.Select(s => s.Id)).ToHashSet(StringComparer.Ordinal);
        return [.. steps, .. added.Select(s => s with { After = [.. s.After.Where(all.Contains)] })];

        bool Is(string part) => IsPart(drafted, part);
        bool WasThere(string part) => IsPart(before, part);
    }

    private static bool IsPart(TypeSheet sheet, string id) =>
        sheet.Elements.Any(e => e.Id == id || (e is Winding w && w.Sliders.Any(s => s.Id == id)));
}
