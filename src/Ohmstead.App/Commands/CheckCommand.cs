using System.CommandLine;
using System.Text.Json.Nodes;

namespace Ohmstead.App.Commands;

/// <summary><c>check SHEET</c>: every problem of a sheet at once.</summary>
internal static class CheckCommand
{
    public static Command Make()
    {
        var (sheet, json) = (CommonOptions.Sheet(), CommonOptions.Json());
        var command = new Command("check", "Report every problem of a type sheet at once.\nExample: ohmstead check my-unit.sheet.json") { sheet, json };
        command.SetAction(parsed => Run(parsed.GetValue(sheet)!, parsed.GetValue(json)));
        return command;
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
        if (!asJson) Console.WriteLine("no problems");
        return ExitCode.Done;
    }
}
