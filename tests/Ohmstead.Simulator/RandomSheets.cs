using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Writes drawn sheets and their expected values.</summary>
internal static class RandomSheets
{
    private const int Count = 38;
    private const int FirstWithBridge = 32;

    /// <summary>
    /// Sheets with resistors with sliders, off ends, capacitors and shared faults begin here. Those that are left out have readings in
    /// which ngspice loses its way.
    /// </summary>
    private const int FirstOfNewSorts = 100;
    private static readonly int[] NewSorts = [100, 102, 103, 104, 105, 106, 107, 108];

    public static void Remake(string folder, string only)
    {
        foreach (int n in Enumerable.Range(0, Count).Concat(NewSorts))
            Remake(Path.Combine(folder, "random"), n, only);
    }

    /// <summary>Further sheets of the new sorts, which nothing keeps: for long tests.</summary>
    public static void More(string folder, int first, int count)
    {
        for (int n = first; n < first + count; n++)
            Remake(folder, NewSorts[^1] + 1 + n, "");
    }

    private static void Remake(string folder, int n, string only)
    {
        string id = "random-" + n.ToString("000", System.Globalization.CultureInfo.InvariantCulture);
        if (!id.Contains(only, StringComparison.Ordinal))
            return;
        string stem = Path.Combine(folder, id["random-".Length..]);
        JsonObject drawn = n < FirstOfNewSorts ? new SheetMaker(1000 + n, n >= FirstWithBridge).Make(id) : new NewSortsMaker(n).Make(id);
        Store.WriteLines(stem + ".sheet.json", drawn, "cores", "controls", "elements", "sharedFaults", "readings", "takeApart");
        JsonObject sheet = Store.Read(stem + ".sheet.json");
        JsonObject[] cases = [.. FaultSets.Draw(new Dice(5000 + n), sheet).Select(faults => Case(sheet, faults))];
        Store.WriteLines(
            stem + ".expected.json",
            new JsonObject { ["source"] = "ngspice, by tests/Ohmstead.Simulator", ["cases"] = new JsonArray([.. cases]) },
            "cases"
        );
        Console.Error.WriteLine(id);
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
