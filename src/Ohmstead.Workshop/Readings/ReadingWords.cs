using System.Globalization;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>A reading and its conditions in words, as short as a line of a table wants them.</summary>
internal static class ReadingWords
{
    /// <summary>Where the probes go.</summary>
    public static string Probes(TypeSheet sheet, ReadingSpec spec) =>
        spec.From.Length == 0 ? "at the plug" : $"{PartNames.Terminal(sheet, spec.From)} to {PartNames.Terminal(sheet, spec.To)}";

    /// <summary>What was read, with its unit.</summary>
    public static string Measured(TakenReading r) =>
        r.Outcome switch
        {
            Outcome.OverRange => "OL",
            Outcome.Jumps => "jumps " + string.Join(" ↔ ", r.JumpValues.Select(v => ValueText.Of(v, r.Spec.Quantity))),
            _ => ValueText.Read(r.Value, r.Spec.Quantity),
        };

    /// <summary>What was shown.</summary>
    /// <param name="quantity">What was read; null when its sheet is not known.</param>
    public static string Shown(Shown shown, Quantity? quantity) =>
        shown.Kind switch
        {
            ShownKind.Value => Value(shown.Value, quantity),
            ShownKind.OverRange => "OL",
            ShownKind.Jumps => $"jumps: {string.Join(", ", shown.Between.Select(v => v is { } number ? Value(number, quantity) : "OL"))}",
            _ => "",
        };

    private static string Value(double value, Quantity? quantity) => quantity is { } q ? ValueText.Read(value, q) : ValueText.Plain(value);

    /// <summary>How the unit stands while it is read: source, controls that are not at rest, loads, straps, what is lifted, how warm.</summary>
    public static string Conditions(TypeSheet sheet, ReadingSpec spec, ReadingState state)
    {
        var parts = new List<string>();
        if (state.Source is { } source)
            parts.Add(Source(sheet, spec, source));
        foreach (var control in sheet.Controls)
            if (state.Controls.TryGetValue(control.Id, out var position))
                parts.Add($"{PartNames.Control(sheet, control.Id)}: {Position(sheet, control, position)}");
        parts.AddRange(
            state.Loads.Select(l =>
                $"{ValueText.Plain(l.Ohms)} Ω on {PartNames.Terminal(sheet, l.From)} and {PartNames.Terminal(sheet, l.To)}"
            )
        );
        parts.AddRange(state.Joined.Select(g => $"{PartNames.Terminals(sheet, g)} clipped together"));
        if (state.Lifted.Length > 0)
            parts.Add($"taken out: {string.Join(", ", state.Lifted.Select(l => PartNames.Of(sheet, l)))}");
        if (Math.Abs(state.Celsius - 20) > 0.05)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"windings at {state.Celsius:0.#} °C"));
        if (spec.IsOpenCase)
            parts.Add($"case open: {PartNames.Step(sheet, spec.Access)} off");
        return string.Join("; ", parts);
    }

    private static string Source(TypeSheet sheet, ReadingSpec spec, SourceSpec source)
    {
        if (source.IsDirect)
            return $"{ValueText.Plain(source.DirectAmps)} A DC from {PartNames.Terminal(sheet, source.From)} to {PartNames.Terminal(sheet, source.To)}";
        var name = BenchConditions.IsOnMains(sheet, spec) ? "line voltage" : "low-voltage supply";
        var series =
            source.HasLamp ? $", through a {ValueText.Plain(source.LampVolts * source.LampAmps)} W series lamp"
            : source.SeriesOhms > 0 ? $", through {ValueText.Of(source.SeriesOhms, Quantity.Ohms)}"
            : "";
        return $"{name} {ValueText.Plain(source.Volts)} V{series}";
    }

    private static string Position(TypeSheet sheet, Control control, ControlPosition position) =>
        !control.IsThrottle
            ? PartNames.Position(sheet, control.Id, position.Selector)
            : position.Throttle switch
            {
                >= 1 => "full",
                <= 0 => "low",
                var x => string.Create(CultureInfo.InvariantCulture, $"{x * 100:0} %"),
            };
}
