using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>Which fault a reading that is off points to, in words.</summary>
public static class Likely
{
    private const double WorthSaying = 0.2;
    private const int MostNamed = 2;

    /// <summary>
    /// The probable faults that move this reading to the side on which it is off: "worn roller: very likely, 83 %"; empty
    /// when none does.
    /// </summary>
    /// <param name="model">The unit's own sheet.</param>
    public static string Of(
        UnitModel model,
        ReadingSpec spec,
        ReadingState state,
        Shown shown,
        Expectation expected,
        Meter meter,
        DiagnosisResult result
    )
    {
        if (shown.Kind == ShownKind.NotTaken)
            return "";
        var isUp = shown.Kind == ShownKind.OverRange || shown.Value > expected.Value;
        var named = result
            .Faults.Where(f => f.Probability >= WorthSaying)
            .Where(f =>
                shown.Kind == ShownKind.Jumps
                    ? f.Mode.Mode is "open" or "resistive" or "worn" or "stuck-open"
                    : Moves(model, spec, state, f, expected, meter, isUp)
            )
            .Take(MostNamed)
            .Select(f =>
                $"{PartNames.Headline(model.Sheet, f.Mode)}, {ValueText.SureOf(f.Probability)}, {ValueText.Percent(f.Probability)}"
            );
        return string.Join("; ", named);
    }

    /// <summary>True when the fault alone, of its estimated size, takes the nominal unit out of the band on that side.</summary>
    private static bool Moves(
        UnitModel model,
        ReadingSpec spec,
        ReadingState state,
        FaultProbability f,
        Expectation expected,
        Meter meter,
        bool isUp
    )
    {
        var fault = new Fault(f.Mode, f.Size ?? f.Mode.MiddleSize);
        if (FaultEffect.ValueWith(model, spec, state, fault, meter) is not { } value)
            return false;
        var shown = value + meter.For(spec.Quantity).LeadsIn(spec.Quantity);
        return isUp ? shown > expected.High : shown < expected.Low;
    }
}
