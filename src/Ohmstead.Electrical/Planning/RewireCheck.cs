using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>
/// Checks a rewire from cold and low-voltage readings, before mains goes on: what to read, what was done wrong, and what
/// these readings cannot tell. Method: docs/methods/rewire.md.
/// </summary>
public static class RewireCheck
{
    /// <summary>A mistake less probable than this is ruled out.</summary>
    public const double RuledOut = 0.005;

    private const int MostProbable = 30;

    /// <summary>Checks a rewire.</summary>
    /// <param name="sheet">The circuit as planned for this unit.</param>
    /// <param name="taken">What was read since the rewire; without readings only what to read is worked out.</param>
    public static RewireResult Run(TypeSheet sheet, UnitReadings taken)
    {
        var table = new MistakeTable(sheet, MistakeList.Of(sheet), taken);
        return Run(table, new Telling(table), new Wiring(sheet), taken);
    }

    /// <summary>As above, for many units read under the same conditions.</summary>
    internal static RewireResult Run(MistakeTable table, Telling told, Wiring wiring, UnitReadings taken)
    {
        var (sheet, mistakes) = (table.Set.Model.Sheet, table.Mistakes);
        var untold = Enumerable.Range(0, mistakes.Length).Where(m => !told.CanBeTold(m)).ToList();
        var dangerous = untold
            .Where(m => mistakes[m].Sizes.Any(s => wiring.IsDangerous(mistakes[m].Make(sheet, s))))
            .ToList();
        var read = Read(table, taken);
        var probable = read.Count == 0 ? [] : new RewireWeights(table, read).All();
        var used = read.Count == 0 ? [.. Enumerable.Range(0, table.Set.Count)] : read.Select(r => r.Reading).ToArray();
        return new RewireResult(
            mistakes,
            VerdictOf(probable, told, table, read, dangerous.Count > 0),
            [
                .. probable
                    .Take(MostProbable)
                    .Select(h => new RewireHypothesis([.. h.Mistakes.Select(m => mistakes[m])], h.Probability)),
            ],
            told.Take(),
            [.. untold.Select(m => mistakes[m])],
            Alike(table, used),
            [.. dangerous.Select(m => mistakes[m])]
        );
    }

    private static RewireVerdict VerdictOf(
        List<(int[] Mistakes, double Probability)> probable,
        Telling told,
        MistakeTable table,
        List<(int Reading, double Shown)> read,
        bool isDangerous
    )
    {
        // What no reading tells keeps its own chance and says nothing here: it stands under "untold".
        bool Counts((int[] Mistakes, double Probability) h) => h.Mistakes.Any(told.CanBeTold);
        var clear = probable.Where(h => !Counts(h)).Sum(h => h.Probability);
        if (probable.Count > 0 && clear < 0.5)
            return RewireVerdict.Mistake;
        var isWhole = told.Take().All(t => read.Any(r => table.SpecOf(r.Reading).Id == t.Spec.Id));
        var singles = new double[table.Mistakes.Length];
        foreach (var h in probable)
        foreach (var m in h.Mistakes)
            singles[m] += h.Probability;
        var left = Enumerable.Range(0, singles.Length).Any(m => told.CanBeTold(m) && singles[m] >= RuledOut);
        return probable.Count > 0 && isWhole && !left && !isDangerous
            ? RewireVerdict.NoneLeft
            : RewireVerdict.NotProved;
    }

    private static List<(int Reading, double Shown)> Read(MistakeTable table, UnitReadings taken)
    {
        var read = new List<(int, double)>();
        for (var r = 0; r < table.Set.Count; r++)
        {
            var last = taken.Readings.LastOrDefault(t => t.Spec.Id == table.SpecOf(r).Id);
            if (last is { Outcome: Outcome.OverRange })
                read.Add((r, table.Cut(r, double.PositiveInfinity)));
            else if (last is { Outcome: Outcome.Value })
                read.Add((r, table.Cut(r, table.Set.Errors[r].ToScale(last.Value))));
        }
        return read;
    }

    /// <summary>Groups of mistakes of which no reading used differs by more than the meter's limit, at no size.</summary>
    private static ImmutableArray<ImmutableArray<Mistake>> Alike(MistakeTable table, int[] used)
    {
        var groups = new List<List<int>>();
        for (var m = 0; m < table.Mistakes.Length; m++)
            if (groups.Find(g => g.TrueForAll(o => AreAlike(table, o, m, used))) is { } group)
                group.Add(m);
            else
                groups.Add([m]);
        return [.. groups.Where(g => g.Count > 1).Select(g => g.Select(m => table.Mistakes[m]).ToImmutableArray())];
    }

    internal static bool AreAlike(MistakeTable table, int a, int b, int[] used)
    {
        var (x, y) = (table.Wrong[a], table.Wrong[b]);
        if (x.Length != y.Length)
            return false;
        for (var s = 0; s < x.Length; s++)
            foreach (var r in used)
                if (Math.Abs(x[s][r] - y[s][r]) > 1)
                    return false;
        return true;
    }
}
