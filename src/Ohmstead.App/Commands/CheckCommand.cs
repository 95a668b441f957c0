using System.CommandLine;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.App.Commands;

/// <summary><c>check SHEET</c>: every problem of a sheet at once.</summary>
internal static class CheckCommand
{
    public static Command Make()
    {
        var (sheet, json) = (CommonOptions.Sheet(), CommonOptions.Json());
        var verb = new Verb("check", "Report every problem of a type sheet at once.",
            "ohmstead check demo/solo-110.sheet.json",
            "ohmstead check my.sheet.json --json         the problems as a list; exit status 2 if there are any")
        {
            sheet, json,
        };
        verb.SetAction(parsed => Run(parsed.GetValue(sheet)!, parsed.GetValue(json)));
        return verb;
    }

    private static int Run(string path, bool asJson)
    {
        var problems = InputFiles.SheetProblems(path);
        if (asJson)
            Output.Print(new JsonObject
            {
                ["sheet"] = path,
                ["problems"] = new JsonArray([.. problems.Select(p => new JsonObject { ["path"] = p.Path, ["wrong"] = p.Wrong, ["right"] = p.Right })]),
            });
        if (problems.Count > 0) throw InputFiles.Refuse(path, problems);
        if (asJson) return ExitCode.Done;
        Console.WriteLine("no problems");
        foreach (var remark in SheetRemarks.Of(InputFiles.Sheet(path, null)))
            Console.WriteLine(Shown.Wrapped($"look at {remark}", 2));
        return ExitCode.Done;
    }
}
