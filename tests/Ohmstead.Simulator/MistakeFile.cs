using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>What the cold and low-voltage readings show on each single mistake of a rewire.</summary>
internal static class MistakeFile
{
    /// <summary>Solves every mistake that the file names anew.</summary>
    public static void Remake(string file, string sheetFile, string only)
    {
        JsonObject sheet = Store.Read(sheetFile),
            given = Store.Read(file);
        if (only.Length > 0 && !file.Contains(only, StringComparison.Ordinal))
            return;
        using Predictor predictor = new();
        foreach (JsonObject entry in given.Objects("mistakes"))
            entry["expected"] = Readings(predictor, sheet, entry.Word("id"), entry.Number("ohms", 0));
        Store.WriteLines(file, given, "mistakes");
    }

    public static JsonObject Readings(Predictor predictor, JsonObject sheet, string mistake, double ohms)
    {
        HashSet<string> low = [.. sheet.Objects("readings").Where(IsLow).Select(r => r.Word("id"))];
        return predictor.Readings(MistakeEdits.Apply(sheet, mistake, ohms), low.Contains);
    }

    /// <summary>No source above 30 V: what may be read before mains.</summary>
    private static bool IsLow(JsonObject reading) =>
        (reading["state"] as JsonObject)?["source"] is not JsonObject source || source.Number("volts", 0) <= 30;
}
