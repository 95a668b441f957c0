using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>A doubt about the bench: several readings are off together in a way that no one part explains.</summary>
/// <param name="Headline">What it probably is.</param>
/// <param name="Do">What to do first.</param>
/// <param name="Size">How much: ohms of the leads, or the share by which the line differs.</param>
public sealed record BenchDoubt(string Headline, string Do, double Size)
{
    /// <summary>Of fewer readings nothing is said of the bench.</summary>
    private const int LeastReadings = 3;

    /// <summary>Readings of more ohms than this hide the leads [Ω].</summary>
    private const double MostOhms = 20;

    /// <summary>Leads of less than this are nothing to speak of; of more they are no leads [Ω]. Common practice, no source.</summary>
    private const double LeastLeads = 0.1;
    private const double MostLeads = 1;

    /// <summary>A line that differs by less than this share is within what sound units spread.</summary>
    private const double LeastLine = 0.02;

    /// <summary>The line's readings agree to this share, whatever else is off.</summary>
    private const double LineAgrees = 0.01;

    /// <summary>What is to be settled before any finding.</summary>
    /// <param name="model">The unit's own sheet.</param>
    public static ImmutableArray<BenchDoubt> Of(UnitModel model, UnitReadings readings) =>
        [.. new[] { Leads(model, readings), Line(model, readings) }.OfType<BenchDoubt>()];

    /// <summary>Every low-ohm reading too high by the same few tenths: the leads are still in it.</summary>
    private static BenchDoubt? Leads(UnitModel model, UnitReadings readings)
    {
        var over = Numbers(readings, r => r.Spec is { Quantity: Quantity.Ohms, State.Source: null })
            .Select(r => (Error: readings.ErrorOf(r), r.Value, Sound: Sound(model, readings, r)))
            .Where(r => r.Sound < MostOhms && r.Error.LeadOhms == 0)
            .Select(r => (Over: r.Value - r.Sound.GetValueOrDefault(), Limit: r.Error.LimitAt(r.Value)))
            .ToList();
        if (over.Count < LeastReadings)
            return null;
        var middle = over.Select(o => o.Over).Order().ElementAt(over.Count / 2);
        return middle is >= LeastLeads and <= MostLeads && over.All(o => Math.Abs(o.Over - middle) <= Math.Max(o.Limit, middle / 3))
            ? new(
                $"Your test leads were probably not taken off: {ValueText.Of(middle, Quantity.Ohms)}",
                "All low-ohm readings are high by the same amount. Touch the leads together, read the ohms, and enter them under Shop. Findings count less until then.",
                middle
            )
            : null;
    }

    /// <summary>Every post off by the same share: the line is not what was noted.</summary>
    private static BenchDoubt? Line(UnitModel model, UnitReadings readings)
    {
        var shares = Numbers(readings, r => r.Spec.Quantity == Quantity.AcVolts && BenchConditions.IsOnMains(model.Sheet, r.Spec) && r.Spec.State is { Loads: [], Source.HasLamp: false })
            .Select(r => (r.Value / Sound(model, readings, r)) - 1)
            .OfType<double>()
            .ToList();
        if (shares.Count < LeastReadings)
            return null;
        var middle = shares.Order().ElementAt(shares.Count / 2);
        return Math.Abs(middle) >= LeastLine && shares.All(s => Math.Abs(s - middle) <= LineAgrees)
            ? new(
                $"The line voltage is probably not what you noted: every post is {ValueText.Percent(Math.Abs(middle))} {(middle > 0 ? "high" : "low")}",
                "Read the outlet again with the unit running, and enter it as line voltage.",
                middle
            )
            : null;
    }

    private static IEnumerable<TakenReading> Numbers(UnitReadings readings, Func<TakenReading, bool> which) =>
        readings
            .Readings.Where(r => r.Outcome == Outcome.Value && which(r))
            .GroupBy(r => r.Spec.Id, StringComparer.Ordinal)
            .Select(g => g.Last());

    /// <summary>What a sound unit shows; null where it cannot be solved.</summary>
    private static double? Sound(UnitModel model, UnitReadings readings, TakenReading r) =>
        FaultEffect.ValueWith(model, r.Spec, r.State, null, readings.Meter);
}
