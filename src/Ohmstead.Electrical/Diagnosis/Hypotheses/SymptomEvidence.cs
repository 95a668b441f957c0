using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Hypotheses;

/// <summary>The symptoms that were asked for, and the readings that jumped when the unit was moved: evidence of causes, not of values.</summary>
internal sealed class SymptomEvidence(IEnumerable<Symptom> answers, IEnumerable<int> jumping)
{
    private const double IntermittentChance = 0.3;
    private const double JumpWithoutCause = 0.005;

    private readonly Symptom[] symptoms = [.. answers];
    private readonly int[] jumps = [.. jumping];

    /// <summary>Log likelihood of them all for a set of classes.</summary>
    public double LogLikelihood(ReadOnlySpan<FaultClass> classes)
    {
        var log = 0.0;
        foreach (var t in symptoms)
        {
            var (none, any) = (1.0, false);
            foreach (var c in classes)
                if (GivenOf(c.Lead, t.Observation) is { } chance)
                    (none, any) = (none * (1 - chance), true);
            var yes = any ? 1 - none : t.Observation.Otherwise;
            log += Math.Log(Math.Clamp(t.Yes ? yes : 1 - yes, 1e-4, 1));
        }
        foreach (var r in jumps)
        {
            var still = 1 - JumpWithoutCause;
            foreach (var c in classes)
                if (IsIntermittent(c.Lead) && c.Moves[r])
                    still *= 1 - IntermittentChance;
            log += Math.Log(1 - still);
        }
        return log;
    }

    /// <summary>What they say of a mode: modes that differ here are not merged.</summary>
    public string KeyOf(FaultMode mode) =>
        string.Join(
            '|',
            symptoms.Select(t => GivenOf(mode, t.Observation)?.ToString("R", System.Globalization.CultureInfo.InvariantCulture) ?? "")
        ) + (jumps.Length > 0 && IsIntermittent(mode) ? "i" : "");

    /// <summary>True when an observation speaks of this mode.</summary>
    public bool Concerns(FaultMode mode) => symptoms.Any(t => GivenOf(mode, t.Observation) is not null);

    private static double? GivenOf(FaultMode mode, Observation o)
    {
        foreach (var (fault, chance) in o.Given)
            if (fault == mode.Name)
                return chance;
        if (!mode.IsShared)
            return null;
        // Where nothing is said of what parts share, each of them has its fault, and acts as it does alone.
        double[] each = [.. o.Given.Where(g => mode.SharedBy.Any(part => g.Fault == $"{part}:{mode.Mode}")).Select(g => g.Chance)];
        return each.Length == 0 ? null : 1 - each.Aggregate(1.0, (none, chance) => none * (1 - chance));
    }

    private static bool IsIntermittent(FaultMode m) =>
        m.Mode is "open" or "resistive" or "worn" or "stuck-open"
        && m.Kind is not (ElementKind.Winding or ElementKind.Rectifier or ElementKind.Lamp or ElementKind.Resistor);
}
