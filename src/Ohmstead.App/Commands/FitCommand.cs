using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>fit SHEET READINGS…</c>: the sheet's values and spreads from units found sound.</summary>
internal static class FitCommand
{
    public static Command Make()
    {
        var (sheet, unit, json) = (CommonOptions.Sheet(), CommonOptions.Unit(), CommonOptions.Json());
        var readings = new Argument<string[]>("READINGS")
        {
            Description = "Readings files of sound units (JSON).",
            Arity = ArgumentArity.OneOrMore,
        };
        var verb = new Verb(
            "fit",
            "Learn a type sheet's values and spreads from sound units.",
            concernsMains: false,
            "ohmstead fit my.sheet.json sound-*.readings.json",
            "ohmstead fit my.sheet.json sound-1.readings.json sound-2.readings.json --json"
        )
        {
            sheet,
            readings,
            unit,
            json,
        };
        verb.SetAction(parsed =>
            Run(InputFiles.Sheet(parsed.GetValue(sheet)!, parsed.GetValue(unit)), parsed.GetValue(readings)!, parsed.GetValue(json))
        );
        return verb;
    }

    private static int Run(TypeSheet sheet, string[] files, bool asJson)
    {
        var units = InputFiles.Readings(files, sheet);
        var fit = Fit.Run(new UnitModel(sheet), units);
        if (asJson)
            Print(sheet, fit);
        else
            Show(sheet, units.Length, fit);
        return ExitCode.Done;
    }

    private static void Print(TypeSheet sheet, FitResult fit) =>
        Output.Print(
            new JsonObject
            {
                ["sheet"] = sheet.Id,
                ["parameters"] = new JsonArray([
                    .. fit
                        .Parameters.Concat(fit.Turns)
                        .Select(p => new JsonObject
                        {
                            ["path"] = p.Path,
                            ["value"] = p.Value,
                            ["standardError"] = Output.Optional(p.StandardError),
                            ["determined"] = p.Determined,
                        }),
                ]),
            }
        );

    private static void Show(TypeSheet sheet, int units, FitResult fit)
    {
        Console.WriteLine(Style.Heading(Shown.NameOf(sheet)));
        Console.WriteLine($"Learned from {Counted.Of(units, "sound unit")}.");
        Console.WriteLine();
        Console.WriteLine(Style.Heading($"  {"figure", -50} {"learned", 10}   give or take"));
        foreach (var p in fit.Parameters.Where(p => p.Determined))
            Console.WriteLine(
                $"  {Shown.Fit(KindFit.Name(sheet, p), 50)} {KindFit.Figure(p, p.Value), 10}   {KindFit.Figure(p, p.StandardError)}"
            );
        Console.WriteLine();
        Console.WriteLine("Not shown by these readings: these stay as in the type sheet.");
        Undetermined(sheet, "values: ", fit.Parameters.Where(p => !p.Determined && !KindFit.IsSpread(p)));
        Undetermined(sheet, "spreads: ", fit.Parameters.Where(p => !p.Determined && KindFit.IsSpread(p)));
    }

    private static void Undetermined(TypeSheet sheet, string what, IEnumerable<FittedParameter> parameters)
    {
        var names = parameters.Select(p => KindFit.Name(sheet, p).Replace("spread of ", "", StringComparison.Ordinal)).ToImmutableArray();
        if (names.Length > 0)
            Console.WriteLine(Shown.Wrapped(what + string.Join("; ", names), 2));
    }
}
