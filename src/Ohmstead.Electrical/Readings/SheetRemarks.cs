using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>What is odd in a sound sheet: nothing that keeps it from being used, but perhaps not what was meant.</summary>
public static class SheetRemarks
{
    /// <summary>Each a sentence with its JSON path.</summary>
    public static IEnumerable<string> Of(TypeSheet sheet)
    {
        foreach (var remark in TitleRemarks.Of(sheet)) yield return remark;
        var model = new UnitModel(sheet);
        for (var n = 0; n < sheet.Readings.Length; n++)
            if (sheet.Readings[n] is var r && (r.IsGate || r.Limits is not null) && !Judging.CanJudge(model, r, r.State))
                yield return FormattableString.Invariant($"$.readings[{n}]: \"{r.Id}\" is a gate that is never judged, for a rectifier loads the core here: it can be passed by its limits alone");
    }
}
