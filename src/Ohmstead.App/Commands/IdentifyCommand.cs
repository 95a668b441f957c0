using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>identify SHEET|OUTLINE… --readings FILE</c>: which of several types a unit is.</summary>
internal static class IdentifyCommand
{
    private const double UsualNone = 0.05;

    private const int MostShown = 6;

    public static Command Make()
    {
        var json = CommonOptions.Json();
        var sheets = new Argument<string[]>("SHEET")
        {
            Description = "The type sheets that it may be (JSON). Outlines will do.",
            Arity = ArgumentArity.OneOrMore,
        };
        var readings = new Option<string>("--readings")
        {
            Description = "What was read on the unit (JSON).",
            HelpName = "FILE",
            Required = true,
        };
        var none = new Option<double>("--none")
        {
            Description = "The chance that it is none of these, before any reading.",
            HelpName = "CHANCE",
            DefaultValueFactory = _ => UsualNone,
        };
        var verb = new Verb(
            "identify",
            "Find out which type a unit is, from its readings.",
            concernsMains: true,
            "ohmstead identify demo/solo-110.sheet.json my.outline.json --readings unit-7.readings.json",
            "ohmstead identify demo/*.sheet.json --readings unit-7.readings.json --none 0.2 --json"
        )
        {
            sheets,
            readings,
            none,
            json,
        };
        verb.SetAction(parsed =>
        {
            var chance = parsed.GetValue(none);
            if (!(chance is > 0 and < 1))
                throw new RefusedInput("--none: is out of range; a number above 0 and below 1 is expected");
            var kinds = InputFiles.PossibleKinds(parsed.GetValue(sheets)!, parsed.GetValue(readings)!);
            var answer = Identifier.Run(kinds, chance, new DiagnosisOptions { Threads = Environment.ProcessorCount });
            if (parsed.GetValue(json))
                Output.Print(Json(answer));
            else
                Show(answer);
            return ExitCode.Done;
        });
        return verb;
    }

    private static JsonObject Json(KindAnswer answer) =>
        new()
        {
            ["kinds"] = new JsonArray([
                .. answer.Kinds.Select(k => new JsonObject
                {
                    ["sheet"] = k.Kind.Name,
                    ["probability"] = k.Probability,
                    ["logEvidence"] = Output.Optional(k.LogEvidence),
                    ["faults"] = new JsonArray([.. k.Faults.Select(f => new JsonObject { ["element"] = f.Element, ["mode"] = f.Mode })]),
                    ["excluded"] = k.Kind.Excluded.Length > 0 ? k.Kind.Excluded : null,
                }),
            ]),
            ["none"] = answer.None,
            ["next"] = new JsonArray([
                .. answer.Next.Select(n => new JsonObject
                {
                    ["id"] = n.Spec.Id,
                    ["bits"] = n.Bits,
                    ["minutes"] = n.Minutes,
                    ["blockedBy"] = Output.Words(n.BlockedBy),
                }),
            ]),
            ["alike"] = new JsonArray([.. answer.Alike.Select(g => Output.Words(g.Select(k => answer.Kinds[k].Kind.Name)))]),
        };

    private static void Show(KindAnswer answer)
    {
        Console.WriteLine(Style.Heading("Which type it is"));
        foreach (var k in answer.Kinds.OrderByDescending(k => k.Probability))
            Console.WriteLine(Shown.Row($"  {ValueText.Percent(k.Probability), 6}  ", $"{Shown.NameOf(k.Kind.Sheet)}{Because(k)}"));
        Console.WriteLine(Shown.Row($"  {ValueText.Percent(answer.None), 6}  ", "none of these"));
        foreach (var group in answer.Alike)
            Console.WriteLine(
                Shown.Wrapped(
                    $"Could be either, the readings taken are the same: {string.Join("; ", group.Select(k => Shown.NameOf(answer.Kinds[k].Kind.Sheet)))}",
                    2
                )
            );
        Console.WriteLine();
        if (answer.IsProbablyNone)
        {
            Console.WriteLine(
                Shown.Wrapped("It is probably a type of its own. Write down what can be seen of it, then: ohmstead draft", 2)
            );
            return;
        }
        Console.WriteLine(Style.Heading("Best next readings"));
        var sheet = answer.Kinds.MaxBy(k => k.Probability)!.Kind.Sheet;
        foreach (var n in answer.Next.Take(MostShown))
            Console.WriteLine(
                Shown.Row(
                    $"  {n.Minutes.ToString("0.#", CultureInfo.InvariantCulture), 4} min  ",
                    $"{PartNames.Reading(sheet, n.Spec.Id)}{(n.BlockedBy.IsEmpty ? "" : $" (locked: first {PartNames.Reading(sheet, n.BlockedBy[0])})")}"
                )
            );
        if (answer.Next.IsEmpty)
            Console.WriteLine("  None: no reading with the case closed would say more.");
    }

    private static string Because(KindProbability k) =>
        k.Kind.Excluded.Length > 0 ? ": it cannot have one of these readings"
        : k.Faults.IsEmpty ? ", nothing wrong"
        : $", with {string.Join("; ", k.Faults.Select(f => PartNames.Fault(k.Kind.Sheet, f)))}";
}
