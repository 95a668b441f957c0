using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>
/// A rewire of two wires that have nothing to do with each other, read with a meter of ± 0.1 Ω and nothing else, so that its scale is ohms times
/// ten: what the method of docs/methods/rewire.md makes of it can be worked out by hand.
/// </summary>
internal static class TwoWires
{
    public const double Floor = 0.1;

    /// <summary>One fifth: odds of a quarter.</summary>
    public const double Percent = 20;

    public static readonly Meter Linear = new(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(0, Floor, 0, 0)));

    /// <summary>Two wires of 1 and 2 Ω of some spread.</summary>
    public static TypeSheet Sheet(double sigma, double firstMinutes = 1) =>
        new SheetDraft()
            .Element("wire", "w-1", "a", "b", new { ohms = 1, spread = new { ohms = sigma } })
            .Element("wire", "w-2", "c", "d", new { ohms = 2, spread = new { ohms = sigma } })
            .Reading("first", "ohms", ["a", "b"], minutes: firstMinutes)
            .Reading("second", "ohms", ["c", "d"])
            .Sheet();

    public static UnitReadings Taken(TypeSheet sheet, params (string Id, double Value)[] values) =>
        new(
            sheet.Id,
            sheet.SupplyVolts,
            null,
            Linear,
            [
                .. values.Select(v => new TakenReading(
                    sheet.FindReading(v.Id)!,
                    double.IsInfinity(v.Value) ? Outcome.OverRange : Outcome.Value,
                    v.Value,
                    [],
                    "",
                    "",
                    sheet.FindReading(v.Id)!.State
                )),
            ],
            []
        );

    public static MistakeTable Table(TypeSheet sheet, params Mistake[] mistakes) => new(sheet, [.. mistakes], Taken(sheet));

    public static Mistake Cold(string wire, params double[] sizes) => new($"cold:{wire}", Percent, [.. sizes]);

    /// <remarks>Variance: (R·σ/0.1)² of the wire, the step of a tenth deviation making σ(1 + σ/20) of σ, and 1/3 of the meter.</remarks>
    public static double Variance(double ohms, double sigma, double share = 1) =>
        Math.Pow(share * ohms * (Math.Exp(0.1 * sigma) - 1) / 0.1 / Floor, 2) + (1.0 / 3);
}
