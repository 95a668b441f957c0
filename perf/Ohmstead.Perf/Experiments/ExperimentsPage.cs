using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments;

/// <summary>Runs the long experiments and writes their tables between two marks of docs/diagnosis.md.</summary>
internal static class ExperimentsPage
{
    private const string Begin = "<!-- measured: begin -->";
    private const string End = "<!-- measured: end -->";

    public static int Run(string root, string[] arguments)
    {
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
            Console.WriteLine(page.ToString());
        else
            Insert(Path.Combine(root, "docs/diagnosis.md"), page.ToString());
        return 0;
    }

    private static void Insert(string file, string tables)
    {
        var text = File.ReadAllText(file);
        var (from, to) = (
            text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length,
            text.IndexOf(End, StringComparison.Ordinal)
        );
        File.WriteAllText(file, string.Create(CultureInfo.InvariantCulture, $"{text[..from]}\n{tables}\n{text[to..]}"));
    }
}
