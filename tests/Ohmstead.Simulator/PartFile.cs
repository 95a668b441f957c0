using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>
/// Rectifiers put into the place of one of a sheet: volts at the posts under a load, and what the part itself sees. An entry names its
/// sheet, from the file's own folder.
/// </summary>
internal static class PartFile
{
    /// <summary>Solves every state that the file names anew.</summary>
    public static void Remake(string file, string only)
    {
        if (!file.Contains(only, StringComparison.Ordinal))
            return;
        JsonObject given = Store.Read(file);
        foreach (JsonObject entry in given.Objects("states"))
            entry["expected"] = Solve(file, entry);
        Store.WriteLines(file, given, "states");
    }

    /// <summary>Solves one state of the file.</summary>
    public static JsonObject Solve(string file, int number) => Solve(file, Store.Read(file).Objects("states").ElementAt(number));

    private static JsonObject Solve(string file, JsonObject entry)
    {
        JsonObject sheet = Store.Read(Path.Combine(Path.GetDirectoryName(file)!, entry.Word("sheet")));
        foreach ((string field, JsonNode? value) in entry["edits"] as JsonObject ?? [])
            Edit(sheet, field, value!);
        Place(sheet.ById("elements", entry.Word("element")), entry);
        JsonObject reading = sheet.ById("readings", entry.Word("reading"));
        string[] posts = [.. reading["between"].Words()];
        reading["state"]!["loads"] = new JsonArray(
            new JsonObject
            {
                ["from"] = posts[0],
                ["to"] = posts[1],
                ["ohms"] = entry.Number("ohms"),
            }
        );
        Bench bench = Bench.Read(sheet, reading);
        using SpiceSession spice = new();
        Wiring wiring = new(CircuitBuilder.Build(sheet, bench), bench);
        TransientResult steady = new PeriodicSolution(spice, wiring, PhasorSolution.Solve(spice, wiring)).Solve();
        return new JsonObject
        {
            ["dcVolts"] = steady.DcVolts,
            ["acVolts"] = steady.AcVolts,
            ["peakReverseVolts"] = steady.Part!.PeakReverseVolts,
            ["peakAmps"] = steady.Part.PeakAmps,
            ["watts"] = steady.Part.Watts,
        };
    }

    private static void Place(JsonObject element, JsonObject entry)
    {
        foreach ((string field, JsonNode? value) in entry["part"]!.AsObject())
            element[field] = value!.DeepClone();
        if (entry["exchanged"] is not null)
            (element["from"], element["to"]) = (element["to"]!.DeepClone(), element["from"]!.DeepClone());
        element["_watched"] = true;
    }

    /// <summary>A fault as a value: <c>roller-left.contactOhms</c>, of an element or of a slider.</summary>
    private static void Edit(JsonObject sheet, string field, JsonNode value)
    {
        string[] parts = field.Split('.');
        sheet
            .Objects("elements")
            .Concat(sheet.Objects("elements").SelectMany(e => e.Objects("sliders")))
            .First(e => e.Word("id") == parts[0])[parts[1]] = value.DeepClone();
    }
}
