using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments.Doubted;

namespace Ohmstead.Perf.Experiments;

/// <summary>Runs the long experiments and writes their tables between two marks of docs/diagnosis.md.</summary>
internal static class ExperimentsPage
{
    private const string Page = "docs/diagnosis.md";

    public static int Run(string root, string[] arguments)
    {
        if (arguments.FirstOrDefault() == "doubt")
            return RunDoubt(root, arguments[1..]);
        var isQuick = arguments.Contains("quick");
        var what = arguments.FirstOrDefault(a => a is "units" or "diagnosis" or "next") ?? "";
        var page = new StringBuilder();
        var minutes = new double[3];
        foreach (
            var (sheet, units) in new[]
            {
                ("tests/Reference/contract/twin-160.sheet.json", "twin-160"),
                ("demo/solo-110.sheet.json", "solo-110"),
            }
        )
        {
            var model = new UnitModel(TypeSheetFile.Read(File.ReadAllText(Path.Combine(root, sheet))).Required);
            if (what == "units")
                DiagnosisExperiment.Run(model, Path.Combine(root, "tests/Reference/units", units), 0, 0, page);
            if (what is "" or "diagnosis")
                DiagnosisExperiment.Run(
                    model,
                    Path.Combine(root, "tests/Reference/units", units),
                    isQuick ? 40 : 300,
                    isQuick ? 10 : 30,
                    page
                );
            if (what is "" or "next")
                minutes = [.. NextExperiment.Run(model, isQuick ? 10 : 100, page).Zip(minutes, (a, b) => a + b)];
        }
        if (what is "" or "next")
            page.AppendLine(
                FormattableString.Invariant(
                    $"\nOver the units of both sheets the proposed order takes {minutes[0] / minutes[1]:P0} of the minutes of the sheets' orders and {minutes[0] / minutes[2]:P0} of shortest first."
                )
            );
        if (isQuick || what.Length > 0)
        {
            Console.WriteLine(page.ToString());
            return 0;
        }
        MarkedPage.Insert(Path.Combine(root, Page), "measured", page.ToString());
        return RunDoubt(root, []);
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
