using System.Diagnostics;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>
/// The cost at 1, 2 and 4 times the elements. The larger sheets hold the sample unit several times over, side by side on one
/// supply: every copy has its own core, windings, controls and readings, and its blades stand across the same source.
/// </summary>
internal static class Scaling
{
    public static int Run()
    {
        Console.WriteLine("| copies | elements | readings | fault modes | all readings [ms] | a reading [µs] | diagnosis, 20 expansions [s] |\n|---|---|---|---|---|---|---|");
        foreach (var copies in (ReadOnlySpan<int>)[1, 2, 4])
        {
            var model = new UnitModel(Repeated(copies));
            var solver = new ReadingSolver();
            var circuits = model.Sheet.Readings.Select(r => new FaultedCircuits(model, r, r.State).Usual).ToArray();
            var times = new List<double>();
            for (var n = 0; n < 200 / copies; n++)
            {
                var began = Stopwatch.GetTimestamp();
                foreach (var c in circuits) solver.Solve(c, model.Nominal);
                times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
            }
            times.Sort();
            var unit = DrawnUnit.Draw(model, 1001, atNominal: true);
            var start = Stopwatch.GetTimestamp();
            var result = Diagnoser.Run(model, unit.Readings, new DiagnosisOptions { MostExpanded = 20, RankNext = false });
            var seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            var median = times[times.Count / 2];
            Console.WriteLine(FormattableString.Invariant(
                $"| {copies} | {model.Sheet.Elements.Length} | {circuits.Length} | {result.Faults.Length} | {median:F2} | {median * 1000 / circuits.Length:F1} | {seconds:F2} |"));
        }
        return 0;
    }

    private static TypeSheet Repeated(int copies)
    {
        var sheet = JsonNode.Parse(RepositoryRoot.Sample.Document.ToJsonString())!.AsObject();
        if (copies == 1) return TypeSheetFile.Read(sheet.ToJsonString()).Required;
        foreach (var list in new[] { "cores", "controls", "elements", "readings" })
        {
            var all = new JsonArray();
            for (var k = 0; k < copies; k++)
                foreach (var item in sheet[list]!.AsArray()) all.Add(Renamed(item!, "-" + "abcd"[k]));
            sheet[list] = all;
        }
        foreach (var list in new[] { "near", "observations", "takeApart" }) sheet.Remove(list);
        foreach (var r in sheet["readings"]!.AsArray().Select(r => r!.AsObject()))
        {
            r["access"] = "closed";
            r.Remove("gate");
        }
        return TypeSheetFile.Read(sheet.ToJsonString()).Required;
    }

    /// <summary>The node with every name made the copy's own; the blades of all copies stand across one supply.</summary>
    private static JsonNode? Renamed(JsonNode? node, string mark) => node switch
    {
        JsonObject o => new JsonObject(o.Select(p => KeyValuePair.Create(p.Key.StartsWith("throttle", StringComparison.Ordinal) || p.Key.StartsWith("whistle", StringComparison.Ordinal) || p.Key.StartsWith("direction", StringComparison.Ordinal) ? p.Key + mark : p.Key,
            p.Key is "kind" or "quantity" or "title" or "positions" or "rest" or "closedIn" or "colour" or "gauge" or "hazard" or "access" || (p.Value is JsonValue v && v.TryGetValue<string>(out var s) && s is "pressed" or "first" or "second") ? p.Value?.DeepClone() : Renamed(p.Value, mark)))),
        JsonArray a => new JsonArray([.. a.Select(i => Renamed(i, mark))]),
        JsonValue v when v.TryGetValue<string>(out var s) => s.StartsWith("blade-", StringComparison.Ordinal) ? s : s + mark,
        _ => node?.DeepClone(),
    };
}
