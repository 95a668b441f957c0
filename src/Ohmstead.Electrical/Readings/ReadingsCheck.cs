using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// Whether readings that come from no file can be used: by the same rules, with the same words and the same places as if a file had
/// them (<see cref="ReadingsFile.Read"/>).
/// </summary>
public static class ReadingsCheck
{
    /// <summary>Every problem, in the order in which a file would have them.</summary>
    public static IReadOnlyList<Problem> Run(TypeSheet sheet, UnitReadings readings)
    {
        var found = new List<Problem>();
        Within(found, "$.supplyVolts", readings.SupplyVolts, ReadingBounds.SupplyVolts);
        foreach (var (quantity, error) in readings.Meter.Errors.OrderBy(e => e.Key))
            Error(found, $"$.meter.{ReadingReader.NameOf(quantity)}", error);
        for (var n = 0; n < readings.Readings.Length; n++)
        {
            var (taken, at) = (readings.Readings[n], string.Create(CultureInfo.InvariantCulture, $"$.readings[{n}]"));
            State(found, at, sheet, taken, readings.SupplyVolts);
            Words(found, at, taken);
            if (taken.OwnError is { } own)
                Error(found, $"{at}.meter", own);
            Value(found, at, taken);
        }
        return found;
    }

    /// <summary>Said of a meter without any error.</summary>
    internal static (string Wrong, string Right) NoError { get; } =
        ("has neither percent nor floor", "every meter has an error: give at least one of them above 0");

    /// <summary>What is wrong where a reading of a low supply was fed with more than that; null when nothing is.</summary>
    /// <param name="low">What the sheet feeds it with [V].</param>
    /// <param name="volts">What it was fed with [V].</param>
    internal static (string Wrong, string Right)? NotLow(ReadingSpec spec, double low, double volts) =>
        low <= SourceSpec.MostLowVolts && volts > SourceSpec.MostLowVolts
            ? (
                string.Create(CultureInfo.InvariantCulture, $"is {volts}, and {spec.Id} is read on a low supply of {low} V"),
                "enter what the low supply gave, at most 30 V; never put mains on for it"
            )
            : null;

    /// <summary>Loads on terminals that no element has.</summary>
    internal static IEnumerable<(string Wrong, string Right)> LoadProblems(TypeSheet sheet, ReadingState state) =>
        state
            .Loads.SelectMany(l => new[] { l.From, l.To })
            .Where(t => !sheet.Elements.Any(e => e.From == t || e.To == t || e.OtherTerminals.Contains(t)))
            .Select(t => ($"terminal \"{t}\" is not in the circuit", "use a terminal that an element has"));

    private static void State(List<Problem> found, string at, TypeSheet sheet, TakenReading taken, double line)
    {
        var (state, spec) = (taken.State, taken.Spec);
        var usual = UnitReadings.AtLine(sheet, spec.State, line);
        if (
            state.Source is { IsDirect: false } source
            && (UnitReadings.IsOnLine(sheet, spec.State) || source.Volts != spec.State.Source!.Volts)
        )
        {
            Within(found, $"{at}.supplyVolts", source.Volts, ReadingBounds.SourceVolts);
            if (NotLow(spec, usual.Source!.Volts, source.Volts) is { } high)
                found.Add(new($"{at}.supplyVolts", high.Wrong, high.Right));
        }
        for (var n = 0; n < state.Loads.Length; n++)
        {
            var load = string.Create(CultureInfo.InvariantCulture, $"{at}.loads[{n}]");
            Within(found, $"{load}.ohms", state.Loads[n].Ohms, ReadingReader.LoadOhms);
            Within(found, $"{load}.henries", state.Loads[n].Henries, ReadingReader.LoadHenries);
        }
        Within(found, $"{at}.celsius", state.Celsius, ReadingBounds.Celsius);
        foreach (var (id, position) in state.Controls.OrderBy(c => c.Key, StringComparer.Ordinal))
            if (position.Selector.Length == 0)
                Within(found, $"{at}.controls.{id}", position.Throttle, ReadingReader.Throttle);
        found.AddRange(ReadingChecks.ControlProblems(sheet, state.Controls).Select(p => p with { Path = $"{at}.controls.{p.Path}" }));
        found.AddRange(LoadProblems(sheet, state).Select(p => new Problem($"{at}.loads", p.Wrong, p.Right)));
    }

    private static void Words(List<Problem> found, string at, TakenReading taken)
    {
        Word(found, $"{at}.waived.by", taken.WaivedBy);
        Word(found, $"{at}.why", taken.Why);
        Word(found, $"{at}.waived.instead", taken.Instead);
    }

    private static void Error(List<Problem> found, string at, MeterError error)
    {
        Within(found, $"{at}.percent", error.Percent, ReadingBounds.Percent);
        Within(found, $"{at}.floor", error.Floor, ReadingBounds.Floor);
        if (error is { Percent: 0, Floor: 0 })
            found.Add(new(at, NoError.Wrong, NoError.Right));
        Within(found, $"{at}.shared", error.Shared, ReadingBounds.Shared);
        Within(found, $"{at}.leadOhms", error.LeadOhms, ReadingBounds.LeadOhms);
    }

    private static void Value(List<Problem> found, string at, TakenReading taken)
    {
        if (taken.Outcome == Outcome.Value)
            Within(found, $"{at}.value", taken.Value, ReadingBounds.Value);
        if (taken.JumpValues.Length > ReadingBounds.MostJumps)
            found.Add(JsonCursor.TooMany($"{at}.value.jumps", taken.JumpValues.Length, ReadingBounds.MostJumps));
        else
            for (var n = 0; n < taken.JumpValues.Length; n++)
                if (!double.IsPositiveInfinity(taken.JumpValues[n]))
                    Within(
                        found,
                        string.Create(CultureInfo.InvariantCulture, $"{at}.value.jumps[{n}]"),
                        taken.JumpValues[n],
                        ReadingBounds.Value
                    );
    }

    private static void Within(List<Problem> found, string at, double figure, Bound bound)
    {
        if (!bound.Holds(figure))
            found.Add(new(at, JsonCursor.Is(figure), bound.Expected));
    }

    /// <summary>Words may be missing; what is there is no longer than a file's.</summary>
    private static void Word(List<Problem> found, string at, string word)
    {
        if (word.Length > JsonCursor.MostLetters)
            found.Add(new(at, JsonCursor.IsText(word), JsonCursor.WordExpected));
    }
}
