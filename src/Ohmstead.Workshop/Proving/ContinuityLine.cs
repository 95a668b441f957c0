using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Proving;

/// <summary>One ohmmeter check of the list, with the band it has to show and what was shown.</summary>
/// <param name="Low">Lower end, leads and the meter's error within; infinity for OL [Ω].</param>
/// <param name="High">Upper end; infinity for OL [Ω].</param>
public sealed record ContinuityLine(ContinuityCheck Check, double Low, double High, WireChecked? Taken)
{
    /// <summary>Sound windings differ by about this share. Common practice, no source.</summary>
    private const double Spread = 0.2;

    /// <summary>From here on nothing but insulation is read [Ω].</summary>
    private const double Apart = 1e6;

    /// <summary>The list with what was taken since a wire was last moved.</summary>
    public static ImmutableArray<ContinuityLine> All(ContinuityPlan plan, BenchUnit unit, TypeSheet sheet, MeterError meter)
    {
        var wiring = WiringCheck.LastWiring(unit, sheet);
        var taken = unit.All<WireChecked>().Where(c => c.Entry.Number > wiring).Select(c => c.Fact).ToList();
        return
        [
            .. plan.Checks.Select(c =>
            {
                var (low, high) = Band(c, meter);
                return new ContinuityLine(
                    c,
                    low,
                    high,
                    taken.FindLast(t => t.First.SequenceEqual(c.First) && t.Second.SequenceEqual(c.Second))
                );
            }),
        ];
    }

    /// <summary>The place of the first check that is not taken; the number of all where none is left.</summary>
    public static int NextOf(ImmutableArray<ContinuityLine> checks) => checks.TakeWhile(c => c.Taken is not null).Count();

    /// <summary>The checks that were taken, last first.</summary>
    public static IEnumerable<ContinuityLine> Last(ImmutableArray<ContinuityLine> checks, BenchUnit unit) =>
        unit.All<WireChecked>()
            .Reverse()
            .Select(t => checks.FirstOrDefault(c => ReferenceEquals(c.Taken, t.Fact)))
            .OfType<ContinuityLine>();

    /// <summary>How long the checks that are left take [min].</summary>
    public static double MinutesLeft(ImmutableArray<ContinuityLine> checks) => checks.Where(c => c.Taken is null).Sum(c => c.Check.Minutes);

    /// <summary>The last check since a wire was moved, to be taken back; null when there is none.</summary>
    public static (Entry Entry, WireChecked Fact)? Undo(BenchUnit unit, TypeSheet sheet)
    {
        var wiring = WiringCheck.LastWiring(unit, sheet);
        return unit.All<WireChecked>().LastOrDefault(c => c.Entry.Number > wiring) is { Fact: not null } last ? last : null;
    }

    /// <summary>What was typed as a fact, or what is wrong with it.</summary>
    public TypedFact Take(string typed)
    {
        var text = typed.Trim();
        if (text.Equals("OL", StringComparison.OrdinalIgnoreCase))
            return new(Of(Shown.OverRange, double.PositiveInfinity), "");
        var number = NumberText.Read(text, Quantity.Ohms);
        return number.Problem.Length > 0 ? new(null, number.Problem) : new(Of(Shown.Number(number.Value), number.Value), "");
    }

    private WireChecked Of(Shown shown, double ohms) =>
        new(Check.First, Check.Second, shown, double.IsPositiveInfinity(High) ? ohms >= Math.Min(Low, Apart) : ohms >= Low && ohms <= High);

    /// <summary>What is joined may read as little as it likes; what a winding lies between, about what that has.</summary>
    private static (double Low, double High) Band(ContinuityCheck check, MeterError meter)
    {
        var ohms = check.Ohms;
        if (ohms >= Apart)
            return (Apart, double.PositiveInfinity);
        var (low, high) = (((1 - Spread) * ohms) + meter.LeadOhms, ((1 + Spread) * ohms) + meter.LeadOhms);
        return (check.IsJoined ? 0 : Math.Max(low - meter.LimitAt(low), 0), high + meter.LimitAt(high));
    }
}
