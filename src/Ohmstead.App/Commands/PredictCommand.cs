using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary><c>predict SHEET</c>: what each reading should be on a sound unit, or on one with given faults.</summary>
internal static class PredictCommand
{
    public static Command Make()
    {
        var (sheet, unit, json) = (CommonOptions.Sheet(), CommonOptions.Unit(), CommonOptions.Json());
        var readings = new Option<string?>("--readings") { Description = "Only these readings.", HelpName = "ID,ID" };
        var faults = new Option<string[]>("--fault") { Description = "A fault of the unit: ELEMENT:MODE[=VALUE], or an exchange A.to~B.to:swap. May be given several times.", HelpName = "FAULT" };
        var command = new Command("predict", "Predict readings with their 95 % band among units of the kind.\nExample: ohmstead predict my.sheet.json --readings left-load --fault roller-left:worn=0.35")
        {
            sheet, unit, readings, faults, json,
        };
        command.SetAction(parsed => Run(
            InputFiles.Sheet(parsed.GetValue(sheet)!, parsed.GetValue(unit)),
            parsed.GetValue(readings), parsed.GetValue(faults) ?? [], parsed.GetValue(json)));
        return command;
    }

    private static int Run(TypeSheet sheet, string? ids, string[] names, bool asJson)
    {
        foreach (var name in names.Where(EndExchange.IsOne))
            sheet = EndExchange.Apply(sheet, name, out var reason) ?? throw new RefusedInput($"--fault: {reason}");
        var model = new UnitModel(sheet);
        var faults = Faults(new FaultCatalogue(model), names.Where(n => !EndExchange.IsOne(n)));
        var predicted = Prediction.Run(model, Chosen(sheet, ids).Select(r => (r, r.State)), faults);
        if (asJson) Print(sheet, names, predicted);
        else Show(sheet, names, predicted);
        return ExitCode.Done;
    }

    private static ImmutableArray<AssumedFault> Faults(FaultCatalogue catalogue, IEnumerable<string> names)
    {
        var faults = ImmutableArray.CreateBuilder<AssumedFault>();
        foreach (var name in names)
        {
            if (!Fault.TryParse(name, catalogue, out var fault, out var hasSize, out var reason)) throw new RefusedInput($"--fault: {reason}");
            if (faults.Any(f => f.Mode.Element == fault.Mode.Element)) throw new RefusedInput($"--fault: {fault.Mode.Element} is given two faults; an element is in one fault mode at a time");
            double? size = hasSize ? fault.Size : fault.Mode.Size == SizeKind.None ? 0 : null;
            faults.Add(new AssumedFault(fault.Mode, size));
        }
        return faults.ToImmutable();
    }

    private static IEnumerable<ReadingSpec> Chosen(TypeSheet sheet, string? ids)
    {
        if (ids is null) return sheet.Readings;
        return ids.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(id => sheet.FindReading(id) ?? throw new RefusedInput($"--readings: \"{id}\" is no reading of this sheet; one of {string.Join(", ", sheet.Readings.Select(r => r.Id))}"))
            .ToList();
    }

    private static void Print(TypeSheet sheet, string[] names, ImmutableArray<PredictedReading> predicted) => Output.Print(new JsonObject
    {
        ["sheet"] = sheet.Id,
        ["faults"] = Output.Words(names),
        ["readings"] = new JsonArray([.. predicted.Select(p => new JsonObject
        {
            ["id"] = p.Spec.Id,
            ["quantity"] = Output.NameOf(p.Spec.Quantity),
            ["value"] = Output.Value(p.Value),
            ["low"] = Output.Value(p.Low),
            ["high"] = Output.Value(p.High),
        })]),
    });

    private static void Show(TypeSheet sheet, string[] names, ImmutableArray<PredictedReading> predicted)
    {
        Console.WriteLine(sheet.Title);
        Console.WriteLine(names.Length == 0 ? "A sound unit:" : $"With {string.Join(", ", names)}:");
        Console.WriteLine();
        Console.WriteLine($"  {"reading",-20} {"expected",-12} {"95 % of units",-22} what");
        foreach (var p in predicted)
            Console.WriteLine($"  {Shown.Fit(p.Spec.Id, 20)} {Shown.Value(p.Value, p.Spec.Quantity),-12} {Shown.Band(p.Low, p.High, p.Spec.Quantity),-22} {Shown.Fit(p.Spec.Title, 44).TrimEnd()}");
        Console.WriteLine();
        Console.WriteLine("The meter's own error comes on top of the band.");
    }
}
