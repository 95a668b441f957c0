using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>Gauss–Newton to the best sizes of a set of faults.</summary>
/// <param name="Top">The best place found.</param>
/// <param name="Directions">By class: movement of the readings for a unit of its share; null where there is no size to fit.</param>
/// <param name="Gradient">By free size, and <paramref name="Curvature"/> by two of them: of the log likelihood.</param>
internal sealed record SizeClimb(SizePoint Top, double[]?[] Directions, double[] Gradient, double[] Curvature)
{
    private const int MostRounds = 6;

    /// <summary>A round that gains less is the last [nat].</summary>
    private const double Enough = 0.01;

    /// <summary>Standard deviation of each share, by class; 0 where there is no size to fit.</summary>
    public double[] Deviations { get; } = ByClass(Directions, Laplace.Deviations(Curvature, Gradient.Length));

    /// <summary>ln ∫ over the sizes relative to the top, by Laplace's method.</summary>
    public double LogIntegral { get; } =
        Laplace.LogIntegral([.. Top.Members.Shares.Where((_, k) => Directions[k] is not null)], Gradient, Curvature);

    /// <summary>Climbs from a place to the top.</summary>
    public static SizeClimb From(SizeProblem problem, SizePoint start)
    {
        var (at, free) = (start, problem.Free);
        var (gradient, curvature) = (new double[free.Length], new double[free.Length * free.Length]);
        var directions = new double[]?[problem.Classes.Length];
        for (var round = 0; free.Length > 0; round++)
        {
            foreach (var k in free)
                directions[k] = problem.DirectionOf(at.Members, at.Predicted, k);
            using (var judged = problem.Judge.At(at.Predicted))
                judged.Project([.. free.Select(k => directions[k]!)], gradient, curvature);
            if (round == MostRounds)
                break;
            var step = Newton(free, at.Members.Shares, gradient, curvature);
            if (step.All(s => Math.Abs(s) < 1e-4) || Stepped(problem, at, step) is not { } higher)
                break;
            var gained = higher.Log - at.Log;
            at = higher;
            if (gained < Enough && round > 0)
                break;
        }
        return new(at, directions, gradient, curvature);
    }

    private static double[] ByClass(double[]?[] directions, double[] ofFree)
    {
        var next = 0;
        return [.. directions.Select(d => d is null ? 0 : ofFree[next++])];
    }

    /// <summary>The Newton step with sizes kept in their range; one at its bound that wants to leave stays.</summary>
    private static double[] Newton(int[] free, double[] shares, double[] gradient, double[] curvature)
    {
        var n = free.Length;
        var step = new double[n];
        var held = new bool[n];
        for (var pass = 0; pass <= n; pass++)
        {
            var (a, b) = ((double[])curvature.Clone(), (double[])gradient.Clone());
            for (var k = 0; k < n; k++)
            {
                a[(k * n) + k] += 1e-3 + (1e-6 * a[(k * n) + k]);
                if (!held[k])
                    continue;
                // With nothing in its row its step comes out as 0.
                for (var j = 0; j < n; j++)
                    a[(k * n) + j] = a[(j * n) + k] = 0;
            }
            SmallSolve.InPlace(a, b, n);
            var changed = false;
            for (var k = 0; k < n; k++)
            {
                var to = Math.Clamp(shares[free[k]] + b[k], 0, 1);
                step[k] = Math.Clamp(to - shares[free[k]], -0.35, 0.35);
                if (!held[k] && step[k] == 0 && b[k] != 0)
                    held[k] = changed = true;
            }
            if (!changed)
                break;
        }
        return step;
    }

    /// <summary>A place higher up along the step, or along a part of it; null where there is none.</summary>
    private static SizePoint? Stepped(SizeProblem problem, SizePoint at, double[] step)
    {
        var free = problem.Free;
        for (var scale = 1.0; scale > 0.1; scale *= 0.4)
        {
            var shares = (double[])at.Members.Shares.Clone();
            for (var k = 0; k < free.Length; k++)
                shares[free[k]] = Math.Clamp(shares[free[k]] + (scale * step[k]), 0, 1);
            var there = problem.Solve(at.Members.At(shares), at.Predicted, free.Length == 1 ? problem.Classes[free[0]] : null);
            if (there.Log > at.Log)
                return there;
        }
        return null;
    }
}
