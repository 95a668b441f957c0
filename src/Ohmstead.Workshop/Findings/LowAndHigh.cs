using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>What a reading would mean before it is taken: the parts on its path that, failing alone, take it to either side.</summary>
/// <param name="Low">Names of parts that would make it low, the most usual first.</param>
/// <param name="High">Names of parts that would make it high.</param>
public sealed record LowAndHigh(ImmutableArray<string> Low, ImmutableArray<string> High)
{
    private const int MostNamed = 3;

    /// <summary>Neither is known.</summary>
    public static LowAndHigh None { get; } = new([], []);

    /// <summary>Works it out by one solve for each way in which a part of the path can fail; a second or so at the most.</summary>
    /// <param name="model">The unit's own sheet.</param>
    /// <param name="path">What lies between the leads; null where nothing does.</param>
    public static LowAndHigh Of(
        UnitModel model,
        ReadingSpec spec,
        ReadingState state,
        Expectation expected,
        Meter meter,
        MeasuredPath? path
    )
    {
        if (path is null)
            return None;
        var on = path.Parts.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        var leads = meter.For(spec.Quantity).LeadsIn(spec.Quantity);
        var (low, high) = (new List<string>(), new List<string>());
        foreach (var mode in new FaultCatalogue(model).Modes.Where(m => on.Contains(m.Element)).OrderByDescending(m => m.Percent))
        {
            if (FaultEffect.ValueWith(model, spec, state, new(mode, mode.MiddleSize), meter) is not { } value)
                continue;
            var shown = value + leads;
            if (shown < expected.Low)
                Add(low, mode.Element);
            else if (shown > expected.High)
                Add(high, mode.Element);
            if (low.Count == MostNamed && high.Count == MostNamed)
                break;
        }
        return new([.. low.Select(Name)], [.. high.Select(Name)]);

        string Name(string id) => PartNames.Of(model.Sheet, id);
    }

    private static void Add(List<string> parts, string id)
    {
        if (parts.Count < MostNamed && !parts.Contains(id))
            parts.Add(id);
    }
}
