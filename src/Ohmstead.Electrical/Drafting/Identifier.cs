using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>Says which of several kinds a unit is, faulty as it may be, or none of them. Method: docs/methods/outline.md.</summary>
public static class Identifier
{
    /// <summary>How far a kind that is none of these is from the nearest one: its turns, and its ohms and core (common practice, no source).</summary>
    private const double StrangeTurns = 0.04,
        StrangeRest = 0.25;

    /// <summary>Of so many of the kinds that fit best a stranger's evidence is worked out.</summary>
    private const int Nearest = 2;

    private const double LeastProbable = 0.01,
        LeastBits = 0.01;

    private const int MostKinds = 5;

    /// <summary>
    /// P(kind) ∝ its chance · Σ over sets of faults · ∫ over units of the kind. None of these has the chance <paramref name="none"/>, and the
    /// evidence of the best-fitting structure with its numbers let loose. Cost: a search for each kind that stays near the best, and two more.
    /// </summary>
    /// <param name="none">Chance that it is none of these [0..1].</param>
    public static KindAnswer Run(ImmutableArray<PossibleKind> kinds, double none, DiagnosisOptions options)
    {
        options = options with { RankNext = false, IsBenchAsNoted = true };
        int[] possible = [.. Enumerable.Range(0, kinds.Length).Where(k => kinds[k].Readings is not null)];
        if (possible.Length == 0)
            return new([.. kinds.Select(k => new KindProbability(k, 0, double.NegativeInfinity, []))], 1, [], []);
        var models = possible.ToDictionary(k => k, k => new UnitModel(kinds[k].Sheet));
        var readings = Shared(kinds, possible, models);
        TypeSheet[] aligned = [.. possible.Select(k => TapAlignment.Of(kinds[k].Sheet, readings[k]))];
        var searches = new KindSearches([.. aligned.Select(s => new UnitModel(s))], [.. possible.Select(k => readings[k])], options);
        var places = possible.Select((k, n) => (k, n)).ToDictionary(p => p.k, p => p.n);
        double Evidence(int k) => searches.LogEvidence[places[k]];
        var found = possible.ToDictionary(k => k, k => searches.Best(places[k]));
        var total = possible.Sum(k => kinds[k].Chance);
        var logs = possible.ToDictionary(k => k, k => Math.Log((1 - none) * kinds[k].Chance / total) + Evidence(k));
        var strange =
            searches.BestOf([
                .. possible.OrderByDescending(Evidence).Take(Nearest).Select(k => (places[k], new UnitModel(LetLoose(aligned[places[k]])))),
            ]) + Math.Log(none);
        var all = Vectors.LogSum([.. logs.Values, strange]);
        var alike = Alike(possible, models, readings);
        var probabilities = possible.ToDictionary(k => k, k => Math.Exp(logs[k] - all));
        // Kinds that the readings do not tell apart share what they have, by their chances.
        foreach (var group in alike)
        {
            var (have, chance) = (group.Sum(k => probabilities[k]), group.Sum(k => kinds[k].Chance));
            foreach (var k in group)
                probabilities[k] = have * kinds[k].Chance / chance;
        }
        return new(
            [
                .. kinds.Select(
                    (k, n) =>
                        found.TryGetValue(n, out var faults)
                            ? new KindProbability(k, probabilities[n], Evidence(n), [.. faults.Select(f => f.Mode)])
                            : new KindProbability(k, 0, double.NegativeInfinity, [])
                ),
            ],
            Math.Exp(strange - all),
            Next(kinds, models, readings, found, probabilities),
            alike
        );
    }

    /// <summary>The readings that every kind can judge, and the observations that every sheet asks for: else the kinds would be weighed by different ones.</summary>
    private static Dictionary<int, UnitReadings> Shared(
        ImmutableArray<PossibleKind> kinds,
        int[] possible,
        Dictionary<int, UnitModel> models
    )
    {
        var count = possible.Min(k => kinds[k].Readings!.Readings.Length);
        int[] judged =
        [
            .. Enumerable
                .Range(0, count)
                .Where(r =>
                    possible.All(k =>
                        kinds[k].Readings!.Readings[r] is var t && (!t.IsTaken || Judging.IsEvidence(models[k], t.Spec, t.State))
                    )
                ),
        ];
        bool IsAskedByAll(string id) => possible.All(k => kinds[k].Sheet.Observations.Any(o => o.Id == id));
        return possible.ToDictionary(
            k => k,
            k =>
                kinds[k].Readings! with
                {
                    Readings = [.. judged.Select(r => kinds[k].Readings!.Readings[r])],
                    Symptoms = [.. kinds[k].Readings!.Symptoms.Where(t => IsAskedByAll(t.Observation.Id))],
                }
        );
    }

    /// <summary>A sheet with its numbers let loose.</summary>
    internal static TypeSheet LetLoose(TypeSheet sheet)
    {
        SpreadOverrides Wider(SpreadOverrides own, Func<string, double> usual, string[] fields) =>
            fields.Aggregate(
                own,
                (s, f) => new(s.ByName.SetItem(f, double.Hypot(s.Of(f, usual(f)), f == "turns" ? StrangeTurns : StrangeRest)))
            );
        return sheet with
        {
            Elements =
            [
                .. sheet.Elements.Select(e =>
                    e is Winding { IsOnCore: true } ? e with { Spread = Wider(e.Spread, f => e.Kind.UsualSpread(f), ["turns", "ohms"]) } : e
                ),
            ],
            Cores =
            [
                .. sheet.Cores.Select(c =>
                    c with
                    {
                        Spread = Wider(
                            c.Spread,
                            Core.UsualSpread,
                            ["lossOhms", c.MagnetisingHenries > 0 ? "magnetisingHenries" : "excitation"]
                        ),
                    }
                ),
            ],
        };
    }

    /// <summary>Kinds whose sound units read the same within the meter's limit, in groups of two or more.</summary>
    private static ImmutableArray<ImmutableArray<int>> Alike(
        int[] possible,
        Dictionary<int, UnitModel> models,
        Dictionary<int, UnitReadings> readings
    )
    {
        var shown = possible.ToDictionary(k => k, k => Shows(models[k], readings[k]));
        var groups = new List<List<int>>();
        foreach (var k in possible)
        {
            var group = groups.FirstOrDefault(g =>
                g.All(o => shown[o].Zip(shown[k]).All(p => Math.Abs(p.First - p.Second) < 1 || (p.First > 1e6 && p.Second > 1e6)))
            );
            if (group is null)
                groups.Add([k]);
            else
                group.Add(k);
        }
        return [.. groups.Where(g => g.Count > 1).Select(g => g.ToImmutableArray())];
    }

    /// <summary>Each reading on the nominal sound unit, on the meter's scale: its limit of error is 1.</summary>
    private static double[] Shows(UnitModel model, UnitReadings readings)
    {
        var taken = readings.Readings.Where(r => r.IsTaken).ToArray();
        var set = new ReadingSet(model, new FaultCatalogue(model), taken.Select(t => (t.Spec, t.State, readings.ErrorOf(t))));
        var predictor = new Predictor(set);
        using var sound = predictor.Assume();
        return [.. Enumerable.Range(0, taken.Length).Select(r => sound.Scaled(r) is { } v ? Math.Min(v, set.OverRangeOnScale(r)) : 0)];
    }

    private static ImmutableArray<NextAboutKind> Next(
        ImmutableArray<PossibleKind> kinds,
        Dictionary<int, UnitModel> models,
        Dictionary<int, UnitReadings> readings,
        Dictionary<int, ImmutableArray<AssumedFault>> found,
        Dictionary<int, double> probabilities
    )
    {
        int[] weighed =
        [
            .. probabilities
                .Where(p => p.Value >= LeastProbable)
                .OrderByDescending(p => p.Value)
                .ThenBy(p => p.Key)
                .Take(MostKinds)
                .Select(p => p.Key),
        ];
        if (weighed.Length < 2)
            return [];
        var first = kinds[weighed[0]];
        var taken = readings[weighed[0]].Readings.Where(r => r.IsTaken).Select(r => r.Spec.Id).ToHashSet(StringComparer.Ordinal);
        // The same reading in another kind goes by its id, or by where it is taken.
        ReadingSpec? Same(int k, ReadingSpec r) =>
            kinds[k].Sheet.FindReading(r.Id) ?? kinds[k].Sheet.Readings.FirstOrDefault(o => WholeReadings.IsSame(kinds[k].Sheet, o, r));
        ReadingSpec[] open =
        [
            .. first.Sheet.Readings.Where(r =>
                !r.IsOpenCase
                && !taken.Contains(r.Id)
                && weighed.All(k => Same(k, r) is { } same && Judging.IsEvidence(models[k], same, same.State))
            ),
        ];
        var predicted = weighed
            .Select(k => Prediction.Run(models[k], open.Select(r => Same(k, r)!).Select(r => (r, r.State)), found[k]))
            .ToArray();
        var total = weighed.Sum(k => probabilities[k]);
        double[] chances = [.. weighed.Select(k => probabilities[k] / total)];
        var next = new List<NextAboutKind>();
        for (var r = 0; r < open.Length; r++)
        {
            if (predicted.Any(p => !p[r].CanJudge || double.IsInfinity(p[r].High)))
                continue;
            var bits = KindDiscrimination.Information(chances, [.. predicted.Select(p => KindDiscrimination.Bell(p[r]))]);
            if (bits >= LeastBits)
                next.Add(new(open[r], bits, open[r].Minutes, Gates.Missing(first.Sheet, readings[weighed[0]], open[r])));
        }
        return
        [
            .. next.OrderBy(n => n.BlockedBy.Length > 0)
                .ThenByDescending(n => n.Bits / Math.Max(n.Minutes, 0.5))
                .ThenBy(n => n.Spec.Id, StringComparer.Ordinal),
        ];
    }
}
