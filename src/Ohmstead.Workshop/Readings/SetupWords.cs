using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>How the unit is set up for a reading, in the words of someone who says it across the bench.</summary>
/// <param name="Red">Where the red probe goes; empty where the quantity is read at the source.</param>
/// <param name="Black">Where the black probe goes.</param>
/// <param name="Feed">What feeds the unit: "none, plug out", "12 V AC on blade 1 and blade 2".</param>
/// <param name="Controls">Each control that is not at rest, and where it stands.</param>
/// <param name="Loads">What hangs on.</param>
/// <param name="Also">What is taken out or strapped together.</param>
public sealed record SetupWords(
    string Red,
    string Black,
    string Feed,
    ImmutableArray<(string Control, string Position)> Controls,
    ImmutableArray<string> Loads,
    ImmutableArray<string> Also
)
{
    /// <summary>Says how a reading is set up.</summary>
    /// <param name="state">The state as it really is (<see cref="BenchConditions"/>).</param>
    public static SetupWords Of(TypeSheet sheet, ReadingSpec spec, ReadingState state)
    {
        var controls = sheet
            .Controls.Where(c => state.Controls.ContainsKey(c.Id))
            .Select(c => (PartNames.Control(sheet, c.Id), Position(sheet, c, state.Controls[c.Id])));
        var loads = state.Loads.Select(l =>
            $"{ValueText.Read(l.Ohms, Quantity.Ohms)} {(IsAcross(l, spec) ? "across the leads" : $"from {PartNames.Terminal(sheet, l.From)} to {PartNames.Terminal(sheet, l.To)}")}"
        );
        var also = state
            .Lifted.Select(e => $"{PartNames.Of(sheet, e)} taken out")
            .Concat(state.Joined.Select(j => $"{PartNames.Terminals(sheet, j)} clipped together"));
        return new(
            PartNames.Terminal(sheet, spec.From),
            PartNames.Terminal(sheet, spec.To),
            FeedOf(sheet, state.Source),
            [.. controls],
            [.. loads],
            [.. also]
        );
    }

    private static bool IsAcross(LoadSpec load, ReadingSpec spec) =>
        (load.From, load.To) == (spec.From, spec.To) || (load.To, load.From) == (spec.From, spec.To);

    /// <summary>Where a control stands.</summary>
    private static string Position(TypeSheet sheet, Control control, ControlPosition at) =>
        !control.IsThrottle
            ? PartNames.Position(sheet, control.Id, at.Selector)
            : at.Throttle switch
            {
                >= 1 => "full",
                <= 0 => "low",
                var x => ValueText.Percent(x),
            };

    private static string FeedOf(TypeSheet sheet, SourceSpec? source)
    {
        if (source is null)
            return "none, plug out";
        var on = $"{PartNames.Terminal(sheet, source.From)} and {PartNames.Terminal(sheet, source.To)}";
        if (source.IsDirect)
            return $"{ValueText.Plain(source.DirectAmps)} A DC, plus on {PartNames.Terminal(sheet, source.From)}, minus on {PartNames.Terminal(sheet, source.To)}";
        var volts = $"{ValueText.Plain(Math.Round(source.Volts, 2))} V AC";
        var lamp = source.HasLamp ? $", through a {ValueText.Plain(Math.Round(source.LampVolts * source.LampAmps))} W lamp" : "";
        var ohms = source.SeriesOhms > 0 ? $", through {ValueText.Of(source.SeriesOhms, Quantity.Ohms)}" : "";
        return source.Volts > sheet.SupplyVolts / 2 ? $"mains, {volts}{lamp}{ohms}" : $"{volts} on {on}{lamp}{ohms}";
    }
}
