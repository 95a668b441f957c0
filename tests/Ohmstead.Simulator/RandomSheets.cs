using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Writes drawn sheets and their expected values.</summary>
internal static class RandomSheets
{
    private const int Count = 38;
    private const int FirstWithBridge = 32;

    public static void Remake(string folder, string only)
    {
        for (int n = 0; n < Count; n++)
        {
            string id = "random-" + n.ToString("000", System.Globalization.CultureInfo.InvariantCulture);
            if (!id.Contains(only, StringComparison.Ordinal))
                continue;
            string stem = Path.Combine(folder, "random", id["random-".Length..]);
            JsonObject drawn = new SheetMaker(1000 + n, n >= FirstWithBridge).Make(id);
            Store.WriteLines(stem + ".sheet.json", drawn, "cores", "controls", "elements", "readings", "takeApart");
            JsonObject sheet = Store.Read(stem + ".sheet.json");
            JsonObject[] cases = [.. FaultSets.Draw(new Dice(5000 + n), sheet).Select(faults => Case(sheet, faults))];
            Store.WriteLines(
                stem + ".expected.json",
                new JsonObject { ["source"] = "ngspice, by tests/Ohmstead.Simulator", ["cases"] = new JsonArray([.. cases]) },
                "cases"
            );
            Console.Error.WriteLine(id);
        }
    }

    /// <summary>The worked example again: the fault sets given there, and more of our own.</summary>
    public static void RemakeSample(string folder, string sample, string only)
    {
        const string id = "twin-160";
        if (!id.Contains(only, StringComparison.Ordinal))
            return;
        JsonObject sheet = Store.Read(Path.Combine(sample, id + ".sheet.json"));
        List<string[]> sets =
        [
            .. Store.Read(Path.Combine(sample, id + ".expected.json")).Objects("cases").Select(entry => entry["faults"].Words().ToArray()),
        ];
        for (int seed = 1; seed <= 6; seed++)
            sets.AddRange(FaultSets.Draw(new Dice(seed), sheet).Skip(1));
        JsonObject[] cases = [.. sets.Select(faults => Case(sheet, faults))];
        Store.WriteLines(
            Path.Combine(folder, id + ".expected.json"),
            new JsonObject { ["source"] = "ngspice, by tests/Ohmstead.Simulator", ["cases"] = new JsonArray([.. cases]) },
            "cases"
        );
        Console.Error.WriteLine(id);
    }

    private static JsonObject Case(JsonObject sheet, string[] faults)
    {
        using Predictor predictor = new();
        return new JsonObject
        {
            ["faults"] = SheetDraft.Names(faults),
            ["expected"] = predictor.Readings(FaultEdits.Apply(sheet, faults.Select(Fault.Parse))),
        };
    }
}
