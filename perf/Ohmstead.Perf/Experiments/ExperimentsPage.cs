using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments.Doubted;
using Ohmstead.Perf.Experiments.Drafted;
using Ohmstead.Perf.Experiments.Heat;
using Ohmstead.Perf.Experiments.Limits;
using Ohmstead.Perf.Experiments.Minutes;

namespace Ohmstead.Perf.Experiments;

/// <summary>Runs the long experiments and writes their tables between the marks of their pages in docs/.</summary>
internal static class ExperimentsPage
{
    private const string Page = "docs/diagnosis.md";
    private const string HeatPage = "docs/methods/proving.md";
    private const string MinutesPage = "docs/methods/deciding.md";
    private const string DraftedPage = "docs/methods/outline.md";

    private static readonly (string File, string Name)[] Sheets =
    [
        ("tests/Reference/sample/twin-160.sheet.json", "twin-160"),
        ("demo/solo-110.sheet.json", "solo-110"),
    ];

    public static int Run(string root, string[] arguments)
    {
        if (arguments.FirstOrDefault() == "doubt")
            return RunDoubt(root, arguments[1..]);
        if (arguments.FirstOrDefault() == "heat-run")
            return RunHeat(root);
        if (arguments.FirstOrDefault() == "minutes")
            return RunMinutes(root);
        if (arguments.FirstOrDefault() == "drafted")
            return RunDrafted(root, arguments[1..]);
        var isQuick = arguments.Contains("quick");
        var what = arguments.FirstOrDefault(a => a is "units" or "diagnosis" or "next") ?? "";
        var page = new StringBuilder();
        var minutes = new double[3];
        var asked = new List<Asked>();
        var kept = KeptResults.OfDiagnosis(root);
        foreach (var (file, name) in Sheets)
        {
            var model = new UnitModel(TypeSheetFile.Read(File.ReadAllText(Path.Combine(root, file))).Required);
            var (units, limits) = (Path.Combine(root, "tests/Reference/units", name), DiagnosisLimits.BySheet[name]);
            var (drawn, wide) =
                what == "units" ? (0, 0)
                : isQuick ? (40, 10)
                : (DiagnosisExperiment.FullUnits, 30);
            if (what is "" or "units" or "diagnosis")
                asked.AddRange(DiagnosisExperiment.Run(model, units, drawn, wide, limits, kept, page));
            if (what is not ("" or "next"))
                continue;
            var own = NextExperiment.Run(model, isQuick ? 10 : 100, kept, page);
            if (!isQuick)
                asked.AddRange(limits.OfMinutes(name, own[0], own[1], own[2]));
            minutes = [.. own.Zip(minutes, (a, b) => a + b)];
        }
        if (what is "" or "next")
            page.AppendLine(
                FormattableString.Invariant(
                    $"\nOver the units of both sheets the proposed order takes {minutes[0] / minutes[1]:P0} of the minutes of the sheets' orders and {minutes[0] / minutes[2]:P0} of shortest first."
                )
            );
        if ((what is "" or "next") && !isQuick)
            asked.AddRange(DiagnosisLimits.OfMinutes(minutes[0], minutes[1], minutes[2]));
        page.AppendLine($"\n## What is asked on units that match\n\n{Asked.Heading}");
        foreach (var figure in asked)
            page.AppendLine(figure.Row());
        var code = asked.All(a => a.IsMet) ? 0 : 1;
        if (isQuick || what.Length > 0)
        {
            Console.WriteLine(page.ToString());
            return code;
        }
        MarkedPage.Insert(Path.Combine(root, Page), "measured", page.ToString());
        return Math.Max(Math.Max(code, Math.Max(RunHeat(root), RunMinutes(root))), Math.Max(RunDoubt(root, []), RunDrafted(root, [])));
    }

    private static int RunHeat(string root)
    {
        var page = new StringBuilder();
        var asked = HeatExperiment.Run(HeatExperiment.FullRuns, 1, page);
        MarkedPage.Insert(Path.Combine(root, HeatPage), "heat runs", page.ToString());
        return asked.All(a => a.IsMet) ? 0 : 1;
    }

    private static int RunMinutes(string root)
    {
        var page = new StringBuilder();
        var asked = MinutesExperiment.Run(page);
        MarkedPage.Insert(Path.Combine(root, MinutesPage), "learned minutes", page.ToString());
        return asked.All(a => a.IsMet) ? 0 : 1;
    }

    /// <param name="arguments">How many units of each type, or <c>times</c>; nothing for all.</param>
    private static int RunDrafted(string root, string[] arguments)
    {
        var (page, times, code) = (new StringBuilder(), new StringBuilder(), 0);
        var units = int.TryParse(arguments.FirstOrDefault(), NumberStyles.None, CultureInfo.InvariantCulture, out var few)
            ? few
            : DraftedExperiment.FullUnits;
        if (arguments is not ["times"])
            code = DraftedExperiment.Run(root, units, page).All(a => a.IsMet) ? 0 : 1;
        if (arguments is not ["times"] && units >= DraftedExperiment.LeastUnits)
            MarkedPage.Insert(Path.Combine(root, DraftedPage), "drafted types", page.ToString());
        if (arguments is not ([] or ["times"]))
            return code;
        code = Math.Max(code, DraftedTimes.Run(root, times).All(a => a.IsMet) ? 0 : 1);
        MarkedPage.Insert(Path.Combine(root, DraftedPage), "drafted times", times.ToString());
        return code;
    }

    private static int RunDoubt(string root, string[] arguments)
    {
        if (DoubtArguments.Read(arguments) is not { } run)
        {
            Console.Error.WriteLine($"usage: {DoubtArguments.Usage}");
            return 2;
        }
        var page = new StringBuilder();
        var asked = DoubtExperiment.Run(root, run, page);
        if (run.IsFull)
            MarkedPage.Insert(Path.Combine(root, Page), "doubted", page.ToString());
        return asked.All(a => a.IsMet) ? 0 : 1;
    }
}
