using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>
/// The likelihood integrated over one or two sizes that the readings leave loose, on the curve or surface of readings that they
/// span: two resistances in series that add up to what was read lie on a bent ridge, which no parabola holds.
/// </summary>
/// <param name="Correction">What that adds to Laplace's method [nat]; 0 where every size is fixed well.</param>
/// <param name="Better">Where the surface rises above the fit: the sizes there.</param>
internal readonly record struct SizeSurface(double Correction, Members? Better)
{
    /// <summary>A point of the surface this much above the fit is a better start [nat].</summary>
    private const double Above = 0.5;

    /// <summary>Deviation of a share from which a parabola is not trusted.</summary>
    private const double Loose = 0.05;

    /// <summary>Deviation of a share anywhere in its range: 1/√12.</summary>
    private const double AnyDeviation = 0.2887;

    /// <summary>Pieces of the looser size.</summary>
    private const int Pieces = 24;

    /// <summary>Integrates over the loosest sizes. Further ones are left free to first order, as Laplace's method has them.</summary>
    public static SizeSurface Over(SizeProblem problem, SizeClimb climb)
    {
        var (fitted, directions) = (climb.Top, climb.Directions);
        int[] loose = [.. problem.Free.OrderByDescending(k => climb.Deviations[k]).ThenBy(k => k)];
        if (loose.Length == 0 || climb.Deviations[loose[0]] < Loose)
            return new(0, null);
        var rest = loose[Math.Min(2, loose.Length)..];
        var judge = problem.Judge with
        {
            Spread = problem.Judge.Evidence.Free(problem.Judge.Spread, rest.Select(k => directions[k]!), AnyDeviation),
        };
        using var judged = judge.At(fitted.Predicted);
        var fit = judged.Log + loose.Take(2).Sum(k => problem.Classes[k].LogDensity(fitted.Members.Shares[k]));
        var laplace = climb.LogIntegral;
        var own = rest.Length > 0 ? LaplaceOf(climb, loose[..2], judged) : laplace;
        var top = loose.Length == 1 ? AlongOne(problem, fitted, loose[0], judge) : AcrossTwo(problem, fitted, loose[0], loose[1], judge);
        // No integral over the range is above the highest point; where it seems so the surface is rough, or the fit is not the top.
        var correction = Math.Min(Math.Min(top.Integral - fit, 0) - own, -laplace);
        if (top.Log < fit + Above)
            return new(correction, null);
        using var there = judge.At(top.Predicted);
        var better = top.Set;
        foreach (var k in rest)
            better = better.At(k, Math.Clamp(better.Shares[k] + there.ShareMove(directions[k]!, AnyDeviation), 0, 1));
        return new(correction, better);
    }

    /// <summary>An integral, and the highest point that was met.</summary>
    private readonly record struct Top(double Integral, double Log, Members Set, double[] Predicted);

    private static double LaplaceOf(SizeClimb climb, int[] sizes, Judgement judged)
    {
        var (gradient, curvature) = (new double[2], new double[4]);
        judged.Project([.. sizes.Select(k => climb.Directions[k]!)], gradient, curvature);
        return Laplace.LogIntegral([.. sizes.Select(k => climb.Top.Members.Shares[k])], gradient, curvature);
    }

    private static Top AlongOne(SizeProblem problem, SizePoint fitted, int k, Judge judge)
    {
        var c = problem.Classes[k];
        var curve = Curve(problem, fitted.Members, fitted.Predicted, k);
        var top = new double[fitted.Predicted.Length];
        var integral = SizeIntegral.Over(SizeIntegral.Fine, c, curve, top, judge);
        CurveShape.At(c.PointShares, curve, integral.BestShare, top);
        return new(integral.Log, integral.BestLog, fitted.Members.At(k, integral.BestShare), top);
    }

    private static Top AcrossTwo(SizeProblem problem, SizePoint fitted, int a, int b, Judge judge)
    {
        var (set, outer, inner) = (fitted.Members, problem.Classes[a], problem.Classes[b]);
        var across = Curve(problem, set, fitted.Predicted, a);
        var surface = across.Select((at, k) => Curve(problem, set.At(a, outer.PointShares[k]), at, b)).ToArray();
        var columns = inner.PointShares.Select((_, j) => surface.Select(s => s[j]).ToArray()).ToArray();
        var curve = columns.Select(_ => new double[fitted.Predicted.Length]).ToArray();
        var none = new double[fitted.Predicted.Length];
        var logs = new double[Pieces];
        var top = new Top(0, double.NegativeInfinity, set, new double[fitted.Predicted.Length]);
        for (var n = 0; n < Pieces; n++)
        {
            var share = (n + 0.5) / Pieces;
            for (var j = 0; j < curve.Length; j++)
                CurveShape.At(outer.PointShares, columns[j], share, curve[j]);
            var density = outer.LogDensity(share);
            var along = SizeIntegral.Over(SizeIntegral.Fine, inner, curve, none, judge);
            logs[n] = density + along.Log;
            if (along.BestLog + density <= top.Log)
                continue;
            top = top with { Log = along.BestLog + density, Set = set.At(a, share).At(b, along.BestShare) };
            CurveShape.At(inner.PointShares, curve, along.BestShare, top.Predicted);
        }
        return top with { Integral = Vectors.LogSum(logs) - Math.Log(Pieces) };
    }

    private static double[][] Curve(SizeProblem problem, Members set, double[] predicted, int k) =>
        [.. problem.Classes[k].PointShares.Select(s => problem.With(set, predicted, k, s))];
}
