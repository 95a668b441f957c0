using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Observed;

/// <summary>
/// The benches that are told apart: the matching one, and one for each doubt. Every chance and deviation here is common practice,
/// no source (docs/methods/diagnosis.md, "Benches").
/// </summary>
internal sealed class BenchTable(Evidence evidence)
{
    /// <summary>Deviation of a line that was noted wrongly, as a share of it.</summary>
    internal const double LineDeviation = 0.03;

    /// <summary>Of test leads that were not taken off [Ω].</summary>
    internal const double LeadDeviation = 0.3;

    /// <summary>A poor meter errs by so many of its stated limits.</summary>
    private const double PoorMeter = 3;

    /// <summary>Another type's figures: so many times what another batch's may be.</summary>
    private const double OtherType = 3;

    /// <summary>Paper that is damp throughout: of all insulation together [nat].</summary>
    internal const double DampDeviation = 2;

    private readonly ReadingSet set = evidence.Set;

    /// <summary>The bench and the unit are as noted.</summary>
    public AssumedBench Matching => new(null, 0.805, Of(_ => 1), [], [], 1);

    /// <summary>The others.</summary>
    public AssumedBench[] Others() =>
        [
            new(DoubtAbout.Line, 0.015, Of(_ => 1), [], [ByReading(Line)], 1),
            new(DoubtAbout.Leads, 0.04, Of(_ => 1), [], [ByReading(Leads)], 1),
            new(DoubtAbout.Meter, 0.015, Of(_ => 1), [], [], PoorMeter * PoorMeter),
            new(DoubtAbout.Unit, 0.03, Of(p => Square(BatchFactor(p))), BatchCommons(1), [], 1),
            new(DoubtAbout.Unit, 0.01, Of(_ => 1), [Common(IsInsulation, DampDeviation)], [], 1),
            new(DoubtAbout.Internal, 0.08, Of(p => Square(InternalFactor(p))), [], [], 1),
            new(
                DoubtAbout.Kind,
                0.005,
                Of(p => Square(OtherType * BatchFactor(p))),
                BatchCommons(OtherType),
                [ByReading(Line)],
                OtherType * OtherType
            ),
        ];

    private double[] Of(Func<Parameter, double> variance) => [.. set.Model.Parameters.Select(variance)];

    private double[] ByReading(Func<int, double> movement) => [.. Enumerable.Range(0, set.Count).Select(movement)];

    /// <summary>Volts and current go with the line, power with its square. A rectifier's drop does not, which is small beside it.</summary>
    private double Line(int r) =>
        evidence.IsOnMains(r)
            ? LineDeviation * evidence.SlopeOfScale(r) * evidence.Value(r) * (set.SpecOf(r).Quantity == Quantity.Watts ? 2 : 1)
            : 0;

    private double Leads(int r) => set.SpecOf(r).Quantity == Quantity.Ohms ? LeadDeviation * evidence.SlopeOfScale(r) : 0;

    /// <summary>How much wider a parameter lies in another batch, by itself.</summary>
    private static double BatchFactor(Parameter p) =>
        p.Kind switch
        {
            ParameterKind.Turns => Math.Max(1.5, 0.012 / p.Sigma),
            ParameterKind.LossOhms => Math.Max(1.5, 0.45 / p.Sigma),
            _ => 1.5,
        };

    /// <summary>Shorted turns and loose plates show as loss, and as a little more magnetizing current.</summary>
    private static double InternalFactor(Parameter p) =>
        p.Kind switch
        {
            ParameterKind.LossOhms => Math.Max(1, 1.2 / p.Sigma),
            ParameterKind.Excitation => Math.Max(1, 0.5 / p.Sigma),
            _ => 1,
        };

    /// <summary>What a batch has in common: wire of another gauge on all windings, turns of the secondaries, cells of another make.</summary>
    private double[][] BatchCommons(double times) =>
        [
            Common(p => p.Kind == ParameterKind.Ohms && IsSecondary(p), 0.2 * times),
            Common(p => p.Kind == ParameterKind.Turns && IsSecondary(p), 0.012 * times),
            Common(p => p.Kind == ParameterKind.SaturationAmps, 1.5 * times),
            Common(p => p.Kind == ParameterKind.SeriesOhms, 0.4 * times),
        ];

    private double[] Common(Func<Parameter, bool> which, double deviation) => Of(p => which(p) ? deviation / p.Sigma : 0);

    private bool IsSecondary(Parameter p) =>
        set.Model.Sheet.Elements[p.Index] is Winding { IsOnCore: true } && !set.Model.ReferenceWindings.Contains(p.Index);

    private bool IsInsulation(Parameter p) =>
        p.Kind == ParameterKind.Ohms && set.Model.Sheet.Elements[p.Index].Kind == ElementKind.Insulation;

    private static double Square(double v) => v * v;
}
