using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Diagnosis.Sizes;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>
/// Groups of modes that the readings taken do not tell apart: no reading differs by more than the meter's limit. Each fault
/// of the most probable set stands with those that could be there in its stead, the others as they are; what is left is
/// compared alone, at the estimated size of one with any size of the other. A class that moves no reading beyond the limit
/// is told from nothing and stands in no group.
/// </summary>
internal sealed class AlikeGroups(Evidence evidence, FaultClass[] classes, Marginals marginals, Workers workers)
{
    private const double MeterLimit = 1;

    /// <summary>Less probable classes are not tried in the place of another.</summary>
    private const double LeastProbability = 0.002;

    private const int Corrections = 3;

    /// <summary>The groups of two modes or more.</summary>
    /// <param name="sound">The readings of the sound unit on the meter's scale.</param>
    /// <param name="isOver">No time to solve any more: all are compared alone.</param>
    public ImmutableArray<ImmutableArray<FaultMode>> Of(double[] sound, bool isOver)
    {
        var groups = isOver ? [] : InCompany(marginals.Sets[0]);
        AddAlone(groups, sound);
        return [.. groups.Select(g => g.SelectMany(c => c.Modes).ToImmutableArray()).Where(g => g.Length > 1)];
    }

    private List<List<FaultClass>> InCompany(Hypothesis best)
    {
        var found = new List<FaultClass>[best.Classes.Length];
        workers.Each(found.Length, (k, worker) => found[k] = StandIns(best, k, worker));
        var seen = new HashSet<FaultClass>();
        return [.. found.Select(g => g.Where(seen.Add).ToList()).Where(g => g.Count > 1)];
    }

    /// <summary>A member of the set, and the classes that in its place give the same readings.</summary>
    private List<FaultClass> StandIns(Hypothesis best, int member, Worker worker)
    {
        var gone = best.Classes[member];
        var rest = best.Members.Without(member);
        var without = worker.Predict(rest, best.Predicted, gone);
        if (evidence.Apart(without, best.Predicted) < MeterLimit)
            return [];
        bool IsTried(FaultClass c) =>
            !best.Members.Contains(c) && marginals.ByClass[c.Number] > LeastProbability && rest.CanAdd(c) && gone.Touches(c);
        double[] With(FaultClass c, double share) => worker.Predict(rest.With(c, share), without, c);
        return [gone, .. classes.Where(c => IsTried(c) && Gives(c, s => With(c, s), best.Predicted))];
    }

    /// <summary>True when the readings are given at some size: the nearest by the curve, corrected by exact solutions.</summary>
    private bool Gives(FaultClass c, Func<double, double[]> solve, double[] wanted)
    {
        var reach = new SizeReach(c, [.. c.PointShares.Select(solve)], evidence);
        var (share, apart) = reach.Nearest(wanted);
        if (!c.IsContinuous)
            return apart < MeterLimit;
        for (var n = 0; n < Corrections; n++)
        {
            var exact = solve(share);
            if (evidence.Apart(exact, wanted) < MeterLimit)
                return true;
            var width = share > 0.5 ? -0.01 : 0.01;
            var (here, beside) = (reach.At(share), reach.At(share + width));
            var most = Enumerable.Range(0, exact.Length).MaxBy(r => Math.Abs(here[r] - beside[r]));
            var slope = (beside[most] - here[most]) / width;
            if (Math.Abs(slope) < 1e-9)
                return false;
            share = Math.Clamp(share + ((wanted[most] - exact[most]) / slope), 0, 1);
        }
        return false;
    }

    private void AddAlone(List<List<FaultClass>> groups, double[] sound)
    {
        var taken = groups.SelectMany(g => g).ToHashSet();
        var alone = classes.ToDictionary(
            c => c,
            c => new SizeReach(c, [.. c.Curve.Select(p => p.Zip(sound, (d, s) => d + s).ToArray())], evidence)
        );
        var estimated = classes.ToDictionary(c => c, c => alone[c].At(FaultTable.SizeOf(c, marginals).Share));
        bool IsAlike(FaultClass a, FaultClass b) =>
            alone[a].Nearest(estimated[b]).Apart < MeterLimit || alone[b].Nearest(estimated[a]).Apart < MeterLimit;
        foreach (var c in classes.OrderByDescending(c => marginals.ByClass[c.Number]).ThenBy(c => c.Number))
        {
            if (taken.Contains(c) || evidence.Apart(estimated[c], sound) < MeterLimit)
                continue;
            var home = groups.Find(g => g.TrueForAll(o => IsAlike(o, c)));
            if (home is null)
                groups.Add([c]);
            else
                home.Add(c);
        }
    }
}
