using System.Globalization;
using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>The independent reference: ngspice netlists straight from a sheet, and the data made with them.</summary>
internal static class Program
{
    private const string Usage = """
        predict SHEET [--fault F]... [--readings ID,ID]
        mistake SHEET ID OHMS
        part FILE NUMBER
        check SHEET EXPECTED [--worst N]
        remake [--only PATTERN] [--into FOLDER] [--sample FOLDER]
        more FOLDER [--first N] [--count N]
        units SHEET OUT [--first N] [--count N] [--seed S] [--expected FAULTS]
        """;

    private static int Main(string[] args)
    {
        CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            Arguments given = new(args);
            switch (given.Verb)
            {
                case "predict":
                    Predict(given);
                    return 0;
                case "mistake":
                    Mistake(given);
                    return 0;
                case "part":
                    Console.WriteLine(PartFile.Solve(given.Place(0), (int)Fields.Parse(given.Place(1))).ToJsonString());
                    return 0;
                case "check":
                    return Check(given);
                case "remake":
                    Remake(given);
                    return 0;
                case "more":
                    More(given);
                    return 0;
                case "units":
                    Units(given);
                    return 0;
                default:
                    Console.Error.WriteLine(Usage);
                    return 2;
            }
        }
        catch (InvalidDataException refused)
        {
            Console.Error.WriteLine(refused.Message);
            return 2;
        }
    }

    private static void Predict(Arguments given)
    {
        JsonObject sheet = Store.Read(given.Place(0));
        JsonObject unit = FaultEdits.Apply(sheet, given.All("fault").Select(Fault.Parse));
        string[]? wanted = given.One("readings")?.Split(',');
        using Predictor predictor = new();
        Console.WriteLine(predictor.Readings(unit, wanted is null ? null : wanted.Contains).ToJsonString());
    }

    private static void Mistake(Arguments given)
    {
        using Predictor predictor = new();
        Console.WriteLine(
            MistakeFile.Readings(predictor, Store.Read(given.Place(0)), given.Place(1), Fields.Parse(given.Place(2))).ToJsonString()
        );
    }

    private static void Remake(Arguments given)
    {
        string folder = given.One("into") ?? "tests/Reference";
        string sample = given.One("sample") ?? "tests/Reference/sample";
        string only = given.One("only") ?? "";
        string solved = Path.Combine(folder, "ngspice");
        RandomSheets.RemakeSample(solved, sample, only);
        RandomSheets.Remake(solved, only);
        MistakeFile.Remake(Path.Combine(solved, "twin-160.mistakes.json"), Path.Combine(sample, "twin-160.sheet.json"), only);
        PartFile.Remake(Path.Combine(solved, "rectifiers.json"), only);
        (string Sheet, int Seed)[] drawn = [(Path.Combine(sample, "twin-160.sheet.json"), 160), ("demo/solo-110.sheet.json", 110)];
        foreach ((string file, int seed) in drawn)
        {
            JsonObject sheet = Store.Read(file);
            new UnitsMaker(sheet, Path.Combine(folder, "units", sheet.Word("id")), seed).Remake(only);
        }
    }

    private static void Units(Arguments given)
    {
        double expected = given.One("expected") is { } faults ? Fields.Parse(faults) : UnitsMaker.UsualFaults;
        new UnitsMaker(Store.Read(given.Place(0)), given.Place(1), Whole(given, "seed", 1), expected).Make(
            Whole(given, "first", 0),
            Whole(given, "count", 40)
        );
    }

    private static void More(Arguments given) => RandomSheets.More(given.Place(0), Whole(given, "first", 0), Whole(given, "count", 40));

    private static int Whole(Arguments given, string name, int otherwise) =>
        given.One(name) is { } text ? (int)Fields.Parse(text) : otherwise;

    private static int Check(Arguments given)
    {
        JsonObject sheet = Store.Read(given.Place(0));
        Comparison comparison = new();
        using Predictor predictor = new();
        foreach (JsonObject entry in Store.Read(given.Place(1)).Objects("cases"))
        {
            string[] faults = [.. entry["faults"].Words()];
            JsonObject expected = entry["expected"]!.AsObject();
            JsonObject found = predictor.Readings(FaultEdits.Apply(sheet, faults.Select(Fault.Parse)), expected.ContainsKey);
            foreach ((string id, JsonNode? value) in expected)
                comparison.Add(sheet.ById("readings", id).Word("quantity"), $"[{string.Join(' ', faults)}] {id}", value!, found[id]!);
        }
        foreach (string line in comparison.Lines((int)Fields.Parse(given.One("worst") ?? "5")))
            Console.WriteLine(line);
        return comparison.Different.Count == 0 ? 0 : 1;
    }
}
