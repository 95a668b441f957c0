using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Drafting;

/// <summary>How probable each of the kinds is that an outline may stand for, by the readings of some units. Method: docs/methods/outline.md.</summary>
/// <param name="Order">The kinds by place, most probable first.</param>
/// <param name="Probabilities">Of each, by place.</param>
/// <param name="Found">By kind and unit: what is wrong with it if it is of this kind.</param>
public sealed record KindWeights(
    ImmutableArray<int> Order,
    ImmutableArray<double> Probabilities,
    ImmutableArray<ImmutableArray<DiagnosisResult>> Found
)
{
    /// <summary>With several kinds to tell apart, each has this share of the work.</summary>
    private const int ManyKinds = 4;

    /// <summary>Within wide bands more sets of faults explain the readings: a search takes so many times the work.</summary>
    private const int WideSearch = 2;

    /// <summary>P(kind) ∝ its chance · Π over units of Σ over sets of faults. Cost: a diagnosis for each kind and unit.</summary>
    public static KindWeights Of(ImmutableArray<KindReadings> kinds, DiagnosisOptions options)
    {
        options = options with { RankNext = false, IsBenchAsNoted = true, MostWork = WideSearch * options.MostWork };
        if (kinds.Length > 1)
            options = options with { MostWork = options.MostWork / ManyKinds, MostExpanded = options.MostExpanded / ManyKinds };
        // What is done with the answers takes as long as one of them.
        var (n, count) = (0, kinds.Sum(k => k.Units.Length) + 1);
        var found = kinds
            .Select(k =>
                k.Units.Select(u => Diagnoser.Run(new UnitModel(TapAlignment.Of(k.Sheet, u)), u, options.Part(n++, count)))
                    .ToImmutableArray()
            )
            .ToImmutableArray();
        double[] logs = [.. kinds.Select((k, n) => Math.Log(k.Kind.Chance) + found[n].Sum(f => f.LogEvidence))];
        var all = Vectors.LogSum(logs);
        return new(
            [.. Enumerable.Range(0, kinds.Length).OrderByDescending(n => logs[n]).ThenBy(n => n)],
            [.. logs.Select(l => Math.Exp(l - all))],
            found
        );
    }

    /// <summary>The kinds with their probabilities, most probable first.</summary>
    public ImmutableArray<(OutlineKind Kind, double Probability)> Of(ImmutableArray<KindReadings> kinds) =>
        [.. Order.Select(n => (kinds[n].Kind, Probabilities[n]))];
}
