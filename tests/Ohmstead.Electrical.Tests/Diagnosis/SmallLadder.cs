using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>
/// A ladder of five parts with six faults, small enough for every set of them to be weighed by summing: a –w1– b –r1– c –w2– d
/// –r2– g, and r3 from c to g. Its readings are written out here as closed forms, apart from the solver.
/// </summary>
internal static class SmallLadder
{
    /// <summary>Nominal ohms and spread of w1, r1, w2, r2, r3.</summary>
    public static readonly (string Id, double Ohms, double Sigma)[] Parts =
    [
        ("w1", 0.05, 0.1),
        ("r1", 10, 0.08),
        ("w2", 0.05, 0.1),
        ("r2", 20, 0.08),
        ("r3", 30, 0.08),
    ];

    /// <summary>By part: its modes with their chance; a size where the resistance is to be summed over, else what it becomes.</summary>
    public static readonly (string Mode, double Percent, double? Ohms)[][] Modes =
    [
        [("resistive", 20, null)],
        [("open", 8, 1e7)],
        [("resistive", 15, null)],
        [("open", 6, 1e7), ("shorted", 10, 0.01)],
        [("open", 12, 1e7)],
    ];

    public const double LeastSize = 0.4;
    public const double MostSize = 30;

    /// <summary>The readings, each as a function of the five resistances.</summary>
    public static readonly (string Id, Func<double[], double> Of)[] Readings =
    [
        ("through", o => o[0] + o[1] + Parallel(o[4], o[2] + o[3])),
        ("first", o => o[0] + o[1]),
        ("second", o => Parallel(o[2], o[3] + o[4])),
        ("volts", o => 12 * Parallel(o[4], o[2] + o[3]) / (o[0] + o[1] + Parallel(o[4], o[2] + o[3])) * o[3] / (o[2] + o[3])),
        ("amps", o => 12 / (o[0] + o[1] + Parallel(o[4], o[2] + o[3]))),
    ];

    public static BenchUnit Unit { get; } = Draft().Unit();

    public static MeterError ErrorOf(int reading) => Meter.Usual.For(Unit.Model.Sheet.Readings[reading].Quantity);

    public static double Parallel(double a, double b) => a * b / (a + b);

    public static UnitReadings Taken(IEnumerable<(int Reading, double Value)> values) =>
        new("draft", 120, null, Meter.Usual, [.. values.Select(v => Taken(Unit.Model.Sheet.Readings[v.Reading], v.Value))], []);

    private static TakenReading Taken(ReadingSpec spec, double value) =>
        spec.Quantity == Quantity.Ohms && value > 20e6
            ? throw new ArgumentException("OL is not part of this", nameof(value))
            : new(spec, Outcome.Value, value, [], "", "", spec.State);

    private static SheetDraft Draft()
    {
        string[][] ends =
        [
            ["a", "b"],
            ["b", "c"],
            ["c", "d"],
            ["d", "g"],
            ["c", "g"],
        ];
        var draft = new SheetDraft();
        for (var n = 0; n < Parts.Length; n++)
        {
            var kind = Parts[n].Id[0] == 'w' ? ElementKind.Wire : ElementKind.Resistor;
            var faults = kind.Faults()
                .ToDictionary(m => m.Mode, m => Modes[n].Where(o => o.Mode == m.Mode).Sum(o => o.Percent), StringComparer.Ordinal);
            draft.Element(
                kind.Word(),
                Parts[n].Id,
                ends[n][0],
                ends[n][1],
                new
                {
                    ohms = Parts[n].Ohms,
                    spread = new { ohms = Parts[n].Sigma },
                    faults,
                }
            );
        }
        object source = new
        {
            source = new
            {
                from = "a",
                to = "g",
                volts = 12,
            },
        };
        return draft
            .Reading("through", "ohms", ["a", "g"])
            .Reading("first", "ohms", ["a", "c"])
            .Reading("second", "ohms", ["c", "d"])
            .Reading("volts", "ac-volts", ["d", "g"], source)
            .Reading("amps", "ac-amps", [], source);
    }
}
