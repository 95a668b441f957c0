using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>Circuits of bare wires, with what a meter showed on them, and what a diagnosis makes of it.</summary>
internal static class WireBench
{
    /// <summary>As noted, and next to no reading wrong: what one reading alone says is what is tested here.</summary>
    private static readonly DiagnosisOptions Options = new()
    {
        RankNext = false,
        IsBenchAsNoted = true,
        WrongReadingChance = 1e-3,
    };

    public static SheetDraft Parts(params (string Id, string From, string To, double OpenPercent)[] wires)
    {
        var draft = new SheetDraft();
        foreach (var (id, from, to, percent) in wires)
            draft.Element(
                "wire",
                id,
                from,
                to,
                new { ohms = 0.01, faults = new Dictionary<string, double> { ["open"] = percent, ["resistive"] = 1 } }
            );
        return draft;
    }

    /// <summary>That many wires in a row, any of which can be open or poor; "whole" reads from end to end.</summary>
    public static BenchUnit Chain(int length)
    {
        var wires = Enumerable
            .Range(0, length)
            .Select(n =>
                (FormattableString.Invariant($"w{n}"), FormattableString.Invariant($"n{n}"), FormattableString.Invariant($"n{n + 1}"), 1.0)
            );
        return Parts([.. wires]).Reading("whole", "ohms", ["n0", FormattableString.Invariant($"n{length}")]).Unit();
    }

    public static TakenReading OL(BenchUnit unit, string id) => Take(unit, id, Outcome.OverRange, 0);

    public static TakenReading Value(BenchUnit unit, string id, double value) => Take(unit, id, Outcome.Value, value);

    public static DiagnosisResult Diagnose(BenchUnit unit, params TakenReading[] readings) =>
        Diagnoser.Run(unit.Model, Unit(unit, readings), Options);

    public static UnitReadings Unit(BenchUnit unit, TakenReading[] readings) =>
        new(unit.Model.Sheet.Id, 120, null, Meter.Usual, [.. readings], []);

    public static double Chance(DiagnosisResult result, string fault) => result.Faults.Single(f => f.Mode.Name == fault).Probability;

    private static TakenReading Take(BenchUnit unit, string id, Outcome outcome, double value)
    {
        var spec = unit.Model.Sheet.FindReading(id)!;
        return new TakenReading(spec, outcome, value, [], "", "", spec.State);
    }
}
