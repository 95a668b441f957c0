using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>Fault sets with the values that the circuit simulator found, and how far ours are from them.</summary>
internal static class ExpectedCases
{
    /// <summary>A fault set and its expected readings: a number, or "OL".</summary>
    public sealed record Case(string[] Faults, JsonObject Expected)
    {
        public override string ToString() => Faults.Length == 0 ? "sound" : string.Join(' ', Faults);
    }

    public static IReadOnlyList<Case> Of(string file) => [.. Reference.Json(file)["cases"]!.AsArray().Select(c => CaseOf(c!))];

    public static Case CaseOf(JsonNode c) => new([.. c["faults"]!.AsArray().Select(f => f!.GetValue<string>())], c["expected"]!.AsObject());

    /// <summary>Every reading that is outside its tolerance, as text.</summary>
    /// <param name="isUndecayed">True where the expected mean volts may carry what is left of a start-up.</param>
    public static IEnumerable<string> Differences(TypeSheet sheet, Case one, bool isUndecayed)
    {
        var (unit, faults) = UnitWith(sheet, one.Faults);
        foreach (var (id, expected) in one.Expected)
        {
            var ours = unit.ReadListed(id, faults);
            if (!IsClose(unit, id, ours, expected!, isUndecayed))
                yield return FormattableString.Invariant($"[{one}] {id}: ours {ours:G7}, expected {expected}");
        }
    }

    /// <summary>The unit with its ends exchanged, and the faults that are left.</summary>
    public static (BenchUnit Unit, string[] Faults) UnitWith(TypeSheet sheet, string[] faults)
    {
        foreach (var f in faults.Where(EndExchange.IsOne))
        {
            var changed = EndExchange.Apply(sheet, f, out var reason);
            Assert.True(changed is not null, reason);
            sheet = changed;
        }
        return (new BenchUnit(sheet), [.. faults.Where(f => !EndExchange.IsOne(f))]);
    }

    private static bool IsClose(BenchUnit unit, string id, double ours, JsonNode expected, bool isUndecayed)
    {
        if (expected.GetValueKind() == JsonValueKind.String)
            return double.IsPositiveInfinity(ours);
        var (spec, value) = (unit.Model.Sheet.FindReading(id)!, expected.GetValue<double>());
        var isMean = isUndecayed && spec.Quantity == Quantity.DcVolts && spec.State.Source is { IsDirect: false };
        return Math.Abs(ours - value) <= Tolerance.Of(spec.Quantity, value, unit.WasPeriodic || isMean);
    }
}
