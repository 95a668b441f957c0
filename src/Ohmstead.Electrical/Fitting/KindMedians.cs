using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Fitting;

/// <summary>The medians of a kind as units have them, with how sure they are, and how the iteration ended.</summary>
/// <param name="Median">By parameter in its spreads, then by shape in its doubt.</param>
/// <param name="Covariance">Of these.</param>
/// <param name="Ratio">By parameter: variance among units over the sheet's.</param>
/// <param name="Worth">By parameter: how many units' worth is known of that variance.</param>
/// <param name="Prior">By median: its deviation before any reading.</param>
internal sealed record KindMedians(
    UnitModel Model,
    ImmutableArray<TurnShape> Shapes,
    UnitRows[] Rows,
    double[] Median,
    double[] Covariance,
    double[] Ratio,
    double[] Worth,
    double[] Prior,
    int Rounds,
    double LastStep
)
{
    private const int MostSources = 3;

    /// <summary>A reading that says less than this share of what the best says is no source.</summary>
    private const double LeastShare = 0.2;

    private int Count => Model.Parameters.Length;

    private double Of(int a, int b) => Covariance[(a * Median.Length) + b];

    /// <summary>Standard deviation of a parameter's median, in its spreads.</summary>
    public double ErrorOf(int parameter) => Math.Sqrt(Of(parameter, parameter));

    /// <summary>True where the readings took at least half of the variance that the median had.</summary>
    public bool IsMeasured(int parameter) =>
        Model.Parameters[parameter].KindSigma > 0 && Of(parameter, parameter) <= Prior[parameter] * Prior[parameter] / 2;

    /// <summary>The turn of a shape: moved with its winding and by itself.</summary>
    public double TurnOf(int shape) =>
        Shapes[shape].Turn * Math.Exp((Median[Shapes[shape].Winding] * Scale(shape)) + (Median[Count + shape] * Shapes[shape].Doubt));

    /// <summary>How far a shape's turn moved by itself, as a factor.</summary>
    public double OwnFactorOf(int shape) => Math.Exp(Median[Count + shape] * Shapes[shape].Doubt);

    /// <summary>Its relative error.</summary>
    public double TurnErrorOf(int shape)
    {
        var (w, s, g, t) = (Shapes[shape].Winding, Count + shape, Scale(shape), Shapes[shape].Doubt);
        return Math.Sqrt(Math.Max((g * g * Of(w, w)) + (t * t * Of(s, s)) + (2 * g * t * Of(w, s)), 0));
    }

    /// <summary>True where the readings took at least half of the variance that the turn had.</summary>
    public bool IsTurnMeasured(int shape) => Math.Pow(TurnErrorOf(shape), 2) <= Shapes[shape].Doubt * Shapes[shape].Doubt;

    private double Scale(int shape) => Model.Parameters[Shapes[shape].Winding].Sigma;

    /// <summary>The readings that say most about a median, by id.</summary>
    public ImmutableArray<string> SourcesOf(int column)
    {
        var all = Rows.SelectMany(r => r.Sources(Ratio, column))
            .GroupBy(s => s.Id, StringComparer.Ordinal)
            .Select(g => (g.Key, Information: g.Sum(s => s.Information)))
            .OrderByDescending(s => s.Information)
            .ThenBy(s => s.Key, StringComparer.Ordinal)
            .ToList();
        return all.Count == 0 || all[0].Information <= 0
            ? []
            : [.. all.Where(s => s.Information >= LeastShare * all[0].Information).Take(MostSources).Select(s => s.Key)];
    }

    /// <summary>The readings that say most about a shape's turn.</summary>
    public ImmutableArray<string> SourcesOfTurn(int shape) => SourcesOf(Count + shape);
}
