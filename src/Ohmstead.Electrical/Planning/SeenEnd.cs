using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>A wire end that an eye saw on another terminal than the planned circuit has it on.</summary>
/// <param name="End">"w-5.to", "main.tap-2".</param>
/// <param name="Terminal">Where it was seen.</param>
public sealed record SeenEnd(string End, string Terminal)
{
    /// <summary>
    /// A joint is read wrongly off a unit or a photo once in fifty (common practice, no source): so much likelier is a mistake that
    /// puts the end there than one that does not.
    /// </summary>
    public const double Odds = 50;

    /// <summary>The mistakes, and for each end seen that none of them puts there, one that does.</summary>
    /// <param name="chances">Chances in one rewire; null for those of the trade.</param>
    internal static ImmutableArray<Mistake> With(
        ImmutableArray<SeenEnd> seen,
        ImmutableArray<Mistake> mistakes,
        TypeSheet sheet,
        RewireChances? chances
    )
    {
        var percent = mistakes
            .Where(m => m.Id.StartsWith("moved:", StringComparison.Ordinal))
            .Select(m => m.Percent)
            .DefaultIfEmpty((chances ?? RewireChances.Usual).MovedPercent)
            .Min();
        return mistakes.AddRange(
            seen.Where(s => s.IsSide && !mistakes.Any(m => s.Fits(m, sheet)))
                .Select(s => new Mistake($"moved:{s.End}>{s.Terminal}", percent, [0]))
                // A wire with both ends on one terminal is no circuit.
                .Where(m => m.Make(sheet, 0).Elements.All(e => e.From != e.To))
        );
    }

    /// <summary>What the ends seen add to the log odds of a mistake [nat].</summary>
    internal static double Nats(ImmutableArray<SeenEnd> seen, Mistake mistake, TypeSheet sheet) =>
        seen.Count(s => s.Fits(mistake, sheet)) * Math.Log(Odds);

    /// <summary>True for an end that mistakes speak of; a tap is none.</summary>
    private bool IsSide => End.EndsWith(".from", StringComparison.Ordinal) || End.EndsWith(".to", StringComparison.Ordinal);

    /// <summary>True when with the mistake in it the circuit has the end where it was seen.</summary>
    private bool Fits(Mistake mistake, TypeSheet sheet)
    {
        if (!IsSide || mistake.Id[..mistake.Id.IndexOf(':', StringComparison.Ordinal)] is not ("swap" or "moved" or "reversed"))
            return false;
        var id = End[..End.LastIndexOf('.')];
        return mistake.Make(sheet, 0).Elements.FirstOrDefault(e => e.Id == id) is { } e
            && (End.EndsWith(".to", StringComparison.Ordinal) ? e.To : e.From) == Terminal;
    }
}
