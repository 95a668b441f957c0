using System.CommandLine;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>check SHEET</c>: every problem of a sheet at once.</summary>
internal static class CheckCommand
{
    public static Command Make()
    {
        var (sheet, json) = (CommonOptions.Sheet(), CommonOptions.Json());
        var verb = new Verb(
            "check",
            "List every mistake in a type sheet at once.",
            concernsMains: false,
            "ohmstead check demo/solo-110.sheet.json",
            "ohmstead check my.sheet.json --json         the problems as a list; exit status 2 if there are any"
        )
        {
            sheet,
            json,
        };
        verb.SetAction(parsed => Run(parsed.GetValue(sheet)!, parsed.GetValue(json)));
        return verb;
    }

    private static int Run(string path, bool asJson)
    {
        var problems = InputFiles.SheetProblems(path);
        var remarks = problems.Count > 0 ? [] : SheetRemarks.Of(InputFiles.Sheet(path, null)).ToList();
        if (asJson)
            Output.Print(
                new JsonObject
                {
                    ["sheet"] = path,
                    ["problems"] = List(problems),
                    ["remarks"] = List(remarks),
                }
            );
        if (problems.Count > 0)
            throw InputFiles.Refuse(path, problems);
        if (asJson)
            return ExitCode.Done;
        Console.WriteLine("no problems");
        if (remarks.Count > 0)
            Console.WriteLine($"Look at {Counted.Of(remarks.Count, "thing")}:");
        foreach (var remark in remarks)
            Console.WriteLine(Shown.Wrapped($"{remark.Path}: {remark.Wrong}; {remark.Right}", 2));
        return ExitCode.Done;
    }

    private static JsonArray List(IEnumerable<Problem> problems) =>
        new([
            .. problems.Select(p => new JsonObject
            {
                ["path"] = p.Path,
                ["wrong"] = p.Wrong,
                ["right"] = p.Right,
            }),
        ]);
}
