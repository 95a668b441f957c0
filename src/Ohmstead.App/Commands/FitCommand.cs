using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary><c>fit SHEET READINGS…</c>: the sheet's values and spreads from units found sound.</summary>
internal static class FitCommand
{
    public static Command Make()
    {
        var (sheet, unit, json) = (CommonOptions.Sheet(), CommonOptions.Unit(), CommonOptions.Json());
        var readings = new Argument<string[]>("READINGS") { Description = "Readings files of units found sound (JSON).", Arity = ArgumentArity.OneOrMore };
        var command = new Command("fit", "Fit a sheet's values and spreads to units found sound.\nExample: ohmstead fit my.sheet.json unit-1.readings.json unit-2.readings.json") { sheet, readings, unit, json };
        command.SetAction(parsed => Run(InputFiles.Sheet(parsed.GetValue(sheet)!, parsed.GetValue(unit)), parsed.GetValue(readings)!, parsed.GetValue(json)));
        return command;
    }

    private static int Run(TypeSheet sheet, string[] files, bool asJson)
    {
        var units = files.Select(f => InputFiles.Readings(f, sheet)).ToImmutableArray();
        var fit = Fit.Run(new UnitModel(sheet), units);
        if (asJson)
            Output.Print(new JsonObject
            {
                ["sheet"] = sheet.Id,
                ["units"] = units.Length,
                ["parameters"] = new JsonArray([.. fit.Parameters.Select(p => new JsonObject
                {
                    ["path"] = p.Path,
                    ["value"] = p.Value,
                    ["standardError"] = p.StandardError,
                    ["determined"] = p.Determined,
                })]),
            });
        else Show(sheet, units.Length, fit);
        return ExitCode.Done;
    }

    private static void Show(TypeSheet sheet, int units, FitResult fit)
    {
        Console.WriteLine(FormattableString.Invariant($"{sheet.Title}: {units} unit(s) found sound"));
        Console.WriteLine();
        Console.WriteLine($"  {"value or spread",-44} {"estimate",14} {"± one standard error",22}");
        foreach (var p in fit.Parameters.Where(p => p.Determined))
            Console.WriteLine(FormattableString.Invariant($"  {Shown.Fit(p.Path, 44)} {p.Value,14:G4} {p.StandardError,22:G2}"));
        Console.WriteLine();
        Console.WriteLine("These readings do not determine, so the sheet's own value stands:");
        foreach (var line in fit.Parameters.Where(p => !p.Determined).Select(p => p.Path).Chunk(3))
            Console.WriteLine("  " + string.Join("  ", line));
    }
}
