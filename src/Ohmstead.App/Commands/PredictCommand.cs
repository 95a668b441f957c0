using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>predict SHEET</c>: what each reading should be on a sound unit, or on one with given faults.</summary>
internal static class PredictCommand
{
    public static Command Make()
    {
        var (sheet, unit, json) = (CommonOptions.Sheet(), CommonOptions.Unit(), CommonOptions.Json());
        var readings = new Option<string?>("--readings") { Description = "Only these readings.", HelpName = "ID,ID" };
        var faults = new Option<string[]>("--fault")
        {
            Description = "With this fault: PART:FAULT[=SIZE]. Two wires swapped: A.to~B.to:swap. May be given again.",
            HelpName = "FAULT",
        };
        var verb = new Verb(
            "predict",
            "Predict each reading, and the range of 95 of 100 units of this type.",
            concernsMains: true,
            "ohmstead predict demo/twin-175.sheet.json",
            "ohmstead predict demo/twin-175.sheet.json --fault roller-1:worn=0.8 --fault disc:leaky",
            "ohmstead predict demo/twin-175.sheet.json --fault w-1.to~w-2.to:swap --readings full-1,full-2",
            "ohmstead predict my.sheet.json --unit unit-7.unit.json --json"
        )
        {
            sheet,
            unit,
            readings,
            faults,
            json,
        };
        verb.SetAction(parsed =>
            Run(
                InputFiles.Sheet(parsed.GetValue(sheet)!, parsed.GetValue(unit)),
                parsed.GetValue(readings),
                parsed.GetValue(faults) ?? [],
                parsed.GetValue(json)
            )
        );
        return verb;
    }

    private static int Run(TypeSheet sheet, string? ids, string[] names, bool asJson)
    {
        var chosen = ids is null ? sheet.Readings : Chosen(sheet, ids);
        var (model, faults) = FaultArguments.Read(sheet, names);
        var predicted = Prediction.Run(model, chosen.Select(r => (r, r.State)), faults);
        if (asJson)
            Print(sheet, names, predicted);
        else
            Show(sheet, names, predicted);
        return ExitCode.Done;
    }

    private static ImmutableArray<ReadingSpec> Chosen(TypeSheet sheet, string ids)
    {
        var wanted = ids.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(id => (Id: id, Spec: sheet.FindReading(id)))
            .ToList();
        if (wanted.Count == 0)
            throw new RefusedInput("--readings: names nothing; give ids of readings, commas between");
        var unknown = wanted
            .Where(w => w.Spec is null)
            .Select(w => $"--readings: there is no reading \"{w.Id}\"; {Names.Like(w.Id, sheet.Readings.Select(r => r.Id))}")
            .ToList();
        return unknown.Count == 0 ? [.. wanted.Select(w => w.Spec!)] : throw new RefusedInput(unknown);
    }

    private static void Print(TypeSheet sheet, string[] names, ImmutableArray<PredictedReading> predicted) =>
        Output.Print(
            new JsonObject
            {
                ["sheet"] = sheet.Id,
                ["faults"] = Output.Words(names),
                ["readings"] = new JsonArray([
                    .. predicted.Select(p => new JsonObject
                    {
                        ["id"] = p.Spec.Id,
                        ["quantity"] = ReadingReader.NameOf(p.Spec.Quantity),
                        ["value"] = Output.Value(p.Value),
                        ["low"] = Output.Value(p.Low),
                        ["high"] = Output.Value(p.High),
                    }),
                ]),
            }
        );

    private static void Show(TypeSheet sheet, string[] names, ImmutableArray<PredictedReading> predicted)
    {
        Console.WriteLine(Style.Heading(Shown.NameOf(sheet)));
        Console.WriteLine(
            names.Length == 0
                ? "A sound unit of this type:"
                : $"A unit with {string.Join("; ", names.Select(n => FaultArguments.Said(sheet, n)))}:"
        );
        Console.WriteLine();
        // An id is typed as it is shown: never cut.
        var wide = predicted.Max(p => p.Spec.Id.Length);
        Console.WriteLine(Style.Heading($"  {"id".PadRight(wide)} {"reads", -9} {"95 of 100 units", -18} reading"));
        foreach (var p in predicted)
            Console.WriteLine(
                Shown.Row(
                    $"  {p.Spec.Id.PadRight(wide)} {ValueText.Of(p.Value, p.Spec.Quantity), -9} {ValueText.Band(p.Low, p.High, p.Spec.Quantity), -18} ",
                    PartNames.Reading(sheet, p.Spec.Id)
                )
            );
        Console.WriteLine();
        var notJudged = predicted.Where(p => !p.CanJudge).Select(p => PartNames.Reading(sheet, p.Spec.Id)).ToList();
        if (notJudged.Count > 0)
            Console.WriteLine(Shown.Wrapped($"Not judged, the disc loads the core here: {string.Join("; ", notJudged)}", 0));
        Console.WriteLine("Your meter adds its own error to the range. Conditions: as in the type sheet.");
    }
}
