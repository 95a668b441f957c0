using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>What is odd in a sound sheet: nothing that keeps it from being used, but perhaps not what was meant.</summary>
public static class SheetRemarks
{
    /// <summary>A source this near to the supply was probably meant to be it (common practice, no source).</summary>
    private const double NearSupply = 0.15;

    /// <summary>Each with its JSON path, what is odd, and what would be right.</summary>
    public static IEnumerable<Problem> Of(TypeSheet sheet)
    {
        var model = new UnitModel(sheet);
        return
        [
            .. Supply(sheet),
            .. FieldRemarks.Of(sheet),
            .. PostRemarks.Of(model),
            .. WindingRemarks.Of(model),
            .. Gates(model),
            .. TitleRemarks.Of(sheet),
        ];
    }

    /// <summary>True for a reading whose source is near the sheet's supply and not it, so that it does not scale with the line voltage.</summary>
    public static bool IsAlmostMains(TypeSheet sheet, ReadingSpec spec) =>
        spec.State.Source is { IsDirect: false } s
        && Math.Abs(s.Volts - sheet.SupplyVolts) is var off
        && off > 1e-9 * s.Volts
        && off <= NearSupply * sheet.SupplyVolts;

    private static IEnumerable<Problem> Supply(TypeSheet sheet) =>
        sheet
            .Readings.Select((r, n) => (Spec: r, n))
            .Where(r => IsAlmostMains(sheet, r.Spec))
            .Select(r => new Problem(
                string.Create(CultureInfo.InvariantCulture, $"$.readings[{r.n}].state.source.volts"),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"is {r.Spec.State.Source!.Volts:G6}, and the supply is {sheet.SupplyVolts:G6}: it will not scale with the line voltage, and a sound unit may read as a faulty one"
                ),
                "write \"mains\""
            ));

    private static IEnumerable<Problem> Gates(UnitModel model) =>
        model
            .Sheet.Readings.Select((r, n) => (Spec: r, n))
            .Where(r => (r.Spec.IsGate || r.Spec.Limits is not null) && !Judging.CanJudge(model, r.Spec, r.Spec.State))
            .Select(r => new Problem(
                string.Create(CultureInfo.InvariantCulture, $"$.readings[{r.n}]"),
                $"\"{r.Spec.Id}\" is a gate that is never judged, for a rectifier loads the core here",
                "it can be passed by its limits alone"
            ));
}
