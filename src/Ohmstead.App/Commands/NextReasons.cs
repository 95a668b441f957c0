using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.App.Commands;

/// <summary>
/// Why a reading is proposed: what it would show under each of the probable sets of faults, as far as that differs; or which
/// fault it would bring to light that nothing taken has shown; and what waits for it.
/// </summary>
internal sealed class NextReasons
{
    private const double LeastProbable = 0.05;
    private const int MostSets = 6;
    private const int MostSuspects = 30;
    private const int MostNamed = 3;

    private readonly UnitModel model;
    private readonly UnitReadings taken;
    private readonly DiagnosisResult result;
    private readonly ImmutableArray<FaultSetProbability> sets;
    private readonly HashSet<FaultMode> common;
    private readonly Func<FaultMode, string> say;

    public NextReasons(UnitModel model, UnitReadings taken, DiagnosisResult result, Func<FaultMode, string>? say = null)
    {
        (this.model, this.taken, this.result) = (model, taken, result);
        this.say = say ?? FaultBars.Say;
        sets = [.. result.Hypotheses.Where(h => h.Probability >= LeastProbable).Take(MostSets)];
        if (sets.IsEmpty) sets = [.. result.Hypotheses.Take(1).DefaultIfEmpty(new FaultSetProbability([], 1))];
        common = [.. sets.Select(h => h.Faults.AsEnumerable()).Aggregate((a, b) => a.Intersect(b))];
    }

    public IEnumerable<string> Of(NextReading next)
    {
        var groups = Groups(next);
        if (groups.Count > 1) yield return "about " + string.Join("; ", groups.Select(g => $"{Shown.Value(g.Band.Value, g.Band.Quantity)} if {Say(g.Own)}"));
        else if (Suspects(next, groups[0].Band) is { Count: > 0 } suspects)
            yield return $"{Shown.Band(groups[0].Band.Low, groups[0].Band.High, groups[0].Band.Quantity)} if nothing else is wrong; otherwise it may show {string.Join(", ", suspects)}";
        var waiting = result.Next.Count(n => n.BlockedBy.Contains(next.Spec.Id));
        if (waiting > 0) yield return $"{Shown.Count(waiting, "other reading")} {(waiting == 1 ? "waits" : "wait")} for it";
    }

    /// <summary>
    /// The probable sets in groups whose bands on this reading lie apart, from the highest value down; of each set what it
    /// does not share with all others.
    /// </summary>
    private List<(Expectation Band, List<ImmutableArray<FaultMode>> Own)> Groups(NextReading next)
    {
        var groups = new List<(Expectation Band, List<ImmutableArray<FaultMode>> Own)>();
        foreach (var set in sets)
        {
            var band = Band(next, set.Faults);
            var own = set.Faults.RemoveAll(common.Contains);
            var home = groups.FindIndex(g => !g.Band.IsApartFrom(band));
            if (home < 0) groups.Add((band, [own]));
            else groups[home].Own.Add(own);
        }
        return [.. groups.OrderByDescending(g => g.Band.Value)];
    }

    /// <summary>The sets that hold no other of the group: with roller-2 worn named, roller-2 worn and more needs no word.</summary>
    private string Say(List<ImmutableArray<FaultMode>> own)
    {
        var least = own.Where(a => !own.Any(b => b.Length < a.Length && b.All(a.Contains)));
        return string.Join(" or ", least.Select(a => a.IsEmpty ? "nothing more is wrong" : string.Join(" + ", a.Select(say))).Distinct(StringComparer.Ordinal));
    }

    /// <summary>Faults, likeliest first, that would move this reading out of the band which the best set gives it.</summary>
    private List<string> Suspects(NextReading next, Expectation usual)
    {
        var found = new List<string>();
        var best = sets[0].Faults;
        foreach (var f in result.Faults.Where(f => !best.Any(m => m.Element == f.Mode.Element)).Take(MostSuspects))
        {
            if (usual.Holds(Band(next, best.Add(f.Mode)).Value)) continue;
            found.Add(say(f.Mode));
            if (found.Count == MostNamed) break;
        }
        return found;
    }

    private Expectation Band(NextReading next, ImmutableArray<FaultMode> faults)
    {
        var sized = faults.Select(m => new AssumedFault(m, SizeOf(m))).ToImmutableArray();
        var predicted = Prediction.Run(model, [(next.Spec, taken.StateOf(model.Sheet, next.Spec))], sized, taken.Meter.IsAveraging);
        return Expectation.Of(predicted[0], taken.Meter.For(next.Spec.Quantity));
    }

    private double SizeOf(FaultMode m) => result.Faults.First(f => f.Mode == m).Size ?? m.MiddleSize;
}
