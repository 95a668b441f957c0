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

    /// <summary>One that could join mains to a post or to the core, or leave a breaker out, must be less probable still.</summary>
    public const double RuledOutDangerous = 0.003;

    /// <summary>
    /// A reading farther than this from what the right wiring shows is not explained by it [deviations]. A contact's drop, whose law
    /// is skewed, passes five in one rightly wired unit of a hundred.
    /// </summary>
    private const double Unlikely = 10;

    private const int MostProbable = 30;

    /// <summary>Checks a rewire.</summary>
    /// <param name="sheet">The circuit as planned for this unit.</param>
    /// <param name="taken">What was read since the rewire; without readings only what to read is worked out.</param>
    /// <param name="chances">Chances of the mistakes; null for those of the trade.</param>
    /// <param name="seen">Ends seen where they are not planned, for which nobody has answered yet: while there is one, nothing is proved.</param>
    /// <param name="progress">Told the share done [0..1], from any thread.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static RewireResult Run(
        TypeSheet sheet,
        UnitReadings taken,
        RewireChances? chances = null,
        IEnumerable<SeenEnd>? seen = null,
        Action<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ImmutableArray<SeenEnd> ends = [.. seen ?? []];
        var table = new MistakeTable(
            sheet,
            SeenEnd.With(ends, MistakeList.Of(sheet, chances), sheet, chances),
            taken,
            progress,
            cancellation
        );
        var wiring = new Wiring(sheet);
        return Run(table, new Discrimination(table, wiring), wiring, taken, ends);
    }

    /// <summary>As above, for many units read under the same conditions.</summary>
    internal static RewireResult Run(
        MistakeTable table,
        Discrimination discrimination,
        Wiring wiring,
        UnitReadings taken,
        ImmutableArray<SeenEnd>? seen = null
    )
    {
        var ends = seen ?? [];
        var (sheet, mistakes) = (table.Set.Model.Sheet, table.Mistakes);
        var unshown = Enumerable.Range(0, mistakes.Length).Where(m => !discrimination.Discriminates(m)).ToList();
        bool IsDangerous(int m) => mistakes[m].Sizes.Any(s => wiring.IsDangerous(mistakes[m].Make(sheet, s)));
        var dangerous = unshown.Where(IsDangerous).ToList();
        var read = Read(table, taken);
        double[] eye = [.. mistakes.Select(m => SeenEnd.Nats(ends, m, sheet))];
        var probable = read.Count == 0 ? [] : new RewireWeights(table, read, eye).All();
        var used = read.Count == 0 ? [.. Enumerable.Range(0, table.Set.Count)] : read.Select(r => r.Reading).ToArray();
        var unexplained = probable is [{ Mistakes: [] }, ..] ? Unexplained(table, read) : [];
        var verdict = VerdictOf(probable, m => eye[m] > 0 || discrimination.Discriminates(m), discrimination, table, read, IsDangerous);
        if (!ends.IsEmpty && verdict == RewireVerdict.NoneLeft)
            verdict = RewireVerdict.NotProved;
        if (verdict == RewireVerdict.NoneLeft && !unexplained.IsEmpty)
            verdict = RewireVerdict.NotProved;
        return new RewireResult(
            mistakes,
            verdict == RewireVerdict.NoneLeft && dangerous.Count > 0 ? RewireVerdict.NotProved : verdict,
            [.. probable.Take(MostProbable).Select(h => new RewireHypothesis([.. h.Mistakes.Select(m => mistakes[m])], h.Probability))],
            discrimination.ShortestList(),
            [.. unshown.Select(m => mistakes[m])],
            Alike(table, used),
            [.. dangerous.Select(m => mistakes[m])]
        )
        {
            WaitsForTheEye = verdict == RewireVerdict.NoneLeft && dangerous.Count > 0,
            Unexplained = unexplained,
        };
    }

    private static ImmutableArray<ReadingSpec> Unexplained(MistakeTable table, List<(int Reading, double Shown)> read) =>
        [
            .. read.Where(r =>
                    Math.Abs(r.Shown - table.Right[r.Reading]) > Unlikely * Math.Sqrt(table.Law([r.Reading], table.Right).Covariance[0])
                )
                .Select(r => table.SpecOf(r.Reading)),
        ];

    private static RewireVerdict VerdictOf(
        List<(int[] Mistakes, double Probability)> probable,
        Func<int, bool> isKnown,
        Discrimination discrimination,
        MistakeTable table,
        List<(int Reading, double Shown)> read,
        Func<int, bool> isDangerous
    )
    {
        // What neither a reading nor an eye tells keeps its own chance and says nothing here: it stands under "untold".
        bool Counts((int[] Mistakes, double Probability) h) => h.Mistakes.Any(isKnown);
        var clear = probable.Where(h => !Counts(h)).Sum(h => h.Probability);
        if (probable.Count > 0 && clear < 0.5)
            return RewireVerdict.Mistake;
        var isWhole = discrimination.ShortestList().All(t => read.Any(r => table.SpecOf(r.Reading).Id == t.Spec.Id));
        var singles = new double[table.Mistakes.Length];
        foreach (var h in probable)
        foreach (var m in h.Mistakes)
            singles[m] += h.Probability;
        var left = Enumerable
            .Range(0, singles.Length)
            .Any(m => isKnown(m) && (singles[m] >= RuledOut || (singles[m] >= RuledOutDangerous && isDangerous(m))));
        return probable.Count > 0 && isWhole && !left ? RewireVerdict.NoneLeft : RewireVerdict.NotProved;
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
