using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Perf.Experiments.Limits;

namespace Ohmstead.Perf.Experiments;

/// <summary>How good the diagnosis is on drawn units, beside what simpler and dearer ways give.</summary>
internal static class DiagnosisExperiment
{
    /// <summary>Units from which on the figures are held to their limits: fewer say more of chance than of the method.</summary>
    public const int FullUnits = 300;

    private static readonly DiagnosisOptions Usual = new() { RankNext = false, Threads = 1 };

    private static readonly DiagnosisOptions Single = Usual with { MostFaults = 1, ExactAdditions = 200 };

    /// <summary>The reference run: everything wider, until nothing within 10 nats is left.</summary>
    private static readonly DiagnosisOptions Wide = Usual with
    {
        MostExpanded = 200,
        ExactAdditions = 30,
        ExactExchanges = 12,
        Margin = 10,
    };

    /// <returns>What is asked of the units that were run in full.</returns>
    public static IEnumerable<Asked> Run(
        UnitModel model,
        string units,
        int drawn,
        int wide,
        DiagnosisLimits limits,
        KeptResults kept,
        StringBuilder page
    )
    {
        var sheet = model.Sheet.Id;
        var library = new ReadingLibrary(model);
        var fromSimulator = Directory.Exists(units)
            ? Directory.GetFiles(units, "*.readings.json").Order(StringComparer.Ordinal).Select(f => FromFile(model, f)).ToList()
            : [];
        var own = Enumerable.Range(0, drawn).Select(n => DrawnUnit.Draw(model, 1000 + n)).ToList();
        page.AppendLine(CultureInfo.InvariantCulture, $"\n## {model.Sheet.Title}\n");
        page.AppendLine(
            CultureInfo.InvariantCulture,
            $"{model.Sheet.Elements.Length} elements, {library.Catalogue.Modes.Length} fault modes, {model.Sheet.Readings.Length} readings.\n"
        );
        page.AppendLine(
            "| units | method | mean average precision | log loss | worst tenth beyond chance | sure and true |\n|---|---|---|---|---|---|"
        );
        var asked = new List<Asked>();
        if (fromSimulator.Count > 0)
        {
            var simulated = Judge(fromSimulator, kept, $"{sheet} simulated", u => Answers(model, u, Usual));
            Row(page, FormattableString.Invariant($"{fromSimulator.Count}, read through ngspice"), "Ohmstead", simulated);
            asked.AddRange(limits.Simulated.Of($"{model.Sheet.Id}, read through ngspice", simulated));
        }
        if (own.Count == 0)
            return asked;
        var all = Judge(own, kept, $"{sheet} drawn", u => Answers(model, u, Usual));
        if (drawn >= FullUnits)
            asked.AddRange(limits.Own.Of($"{model.Sheet.Id}, read through the own solver", all));
        Row(page, FormattableString.Invariant($"{drawn}, read through the own solver"), "Ohmstead", all);
        Row(
            page,
            FormattableString.Invariant($"{drawn}, the same"),
            "the chances alone",
            Judge(own, kept, $"{sheet} chances", u => Chances(library.Catalogue, u))
        );
        Row(
            page,
            FormattableString.Invariant($"{drawn}, the same"),
            "one fault at most",
            Judge(own, kept, $"{sheet} single", u => Answers(model, u, Single))
        );
        var few = own.Take(wide).ToList();
        Row(
            page,
            FormattableString.Invariant($"the first {wide}"),
            "Ohmstead",
            Judge(few, kept, $"{sheet} drawn", u => Answers(model, u, Usual))
        );
        Row(
            page,
            FormattableString.Invariant($"the first {wide}"),
            "reference run (200 sets expanded, margin 10 nats)",
            Judge(few, kept, $"{sheet} wide", u => Answers(model, u, Wide))
        );
        foreach (var share in (ReadOnlySpan<double>)[0.75, 0.5, 0.25])
        {
            var fewer = Enumerable.Range(0, wide).Select(n => DrawnUnit.Draw(model, 1000 + n, share)).ToList();
            Row(
                page,
                string.Create(CultureInfo.InvariantCulture, $"the first {wide}, {share:P0} of the readings"),
                "Ohmstead",
                Judge(fewer, kept, FormattableString.Invariant($"{sheet} {share}"), u => Answers(model, u, Usual))
            );
        }
        page.AppendLine(
            "\nCalibration of the whole set (own solver): mean probability said, share true, answers.\n\n| tenth | said | true | answers |\n|---|---|---|---|"
        );
        foreach (var row in all.TenthRows())
            page.AppendLine(row);
        return asked;
    }

    private static DrawnUnit FromFile(UnitModel model, string file)
    {
        var readings = ReadingsFile.Read(File.ReadAllText(file), model.Sheet).Required;
        var truth = JsonNode.Parse(File.ReadAllText(file.Replace(".readings.", ".truth.", StringComparison.Ordinal)))!.AsArray();
        return new DrawnUnit([.. truth.Select(t => $"{(string)t!["element"]!}:{(string)t["mode"]!}")], readings);
    }

    private static Score Judge(List<DrawnUnit> units, KeptResults kept, string name, Func<DrawnUnit, Dictionary<string, double>> answer)
    {
        var score = new Score();
        var answers = new Dictionary<string, double>[units.Count];
        Parallel.For(
            0,
            units.Count,
            new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
            n => answers[n] = kept.Of(FormattableString.Invariant($"{name} {n}"), () => answer(units[n]))
        );
        for (var n = 0; n < units.Count; n++)
            score.Add([.. answers[n].Select(a => (a.Key, a.Value))], units[n].Truth);
        return score;
    }

    private static Dictionary<string, double> Answers(UnitModel model, DrawnUnit unit, DiagnosisOptions options) =>
        Diagnoser.Run(model, unit.Readings, options).Faults.ToDictionary(f => f.Mode.Name, f => f.Probability, StringComparer.Ordinal);

    private static Dictionary<string, double> Chances(FaultCatalogue catalogue, DrawnUnit unit)
    {
        var chances = catalogue.Chances(catalogue.Odds(unit.Readings.ExpectedFaults));
        return catalogue.Modes.ToDictionary(m => m.Name, m => chances[m.Number], StringComparer.Ordinal);
    }

    private static void Row(StringBuilder page, string units, string method, Score s)
    {
        var row = string.Create(
            CultureInfo.InvariantCulture,
            $"| {units} | {method} | {s.MeanAveragePrecision:F3} | {s.LogLoss:F2} | {s.WorstCalibration:F3} | {s.Sure.True}/{s.Sure.Count} |"
        );
        page.AppendLine(row);
        Console.WriteLine(row);
    }
}
