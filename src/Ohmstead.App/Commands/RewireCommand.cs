using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>rewire SHEET [READINGS]</c>: checks a rewire before mains goes on.</summary>
internal static class RewireCommand
{
    private const int MostShown = 8;

    private const int MostNamed = 30;

    public static Command Make()
    {
        var (sheet, unit, json) = (CommonOptions.Sheet(), CommonOptions.Unit(), CommonOptions.Json());
        var readings = new Argument<string?>("READINGS")
        {
            Description = "What was read since a wire moved (JSON). Without it: what to read.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var verb = new Verb(
            "rewire",
            "Check the wiring from cold and low-voltage readings, before mains.",
            concernsMains: true,
            "ohmstead rewire my.sheet.json",
            "ohmstead rewire my.sheet.json after.readings.json --unit this.unit.json --json"
        )
        {
            sheet,
            readings,
            unit,
            json,
        };
        verb.SetAction(parsed =>
        {
            var (planned, taken, _) = KindAtHand.Read(parsed.GetValue(sheet)!, parsed.GetValue(unit), parsed.GetValue(readings));
            if (PlanningBound.RefuseRewire(planned) is { Length: > 0 } refused)
                throw new RefusedInput($"{parsed.GetValue(sheet)}: {refused}");
            var result = RewireCheck.Run(planned, taken);
            if (parsed.GetValue(json))
                Output.Print(Json(result));
            else
                Show(planned, result);
            return ExitCode.Done;
        });
        return verb;
    }

    private static string Word(RewireVerdict verdict) =>
        verdict switch
        {
            RewireVerdict.Mistake => "mistake",
            RewireVerdict.NoneLeft => "no listed mistake left",
            _ => "not proved",
        };

    private static string Said(RewireVerdict verdict) =>
        verdict switch
        {
            RewireVerdict.Mistake => "Wiring mistake",
            RewireVerdict.NoneLeft => "No listed mistake left",
            _ => "Not finished",
        };

    private static JsonArray Ids(IEnumerable<Mistake> mistakes) => Output.Words(mistakes.Select(m => m.Id));

    private static JsonObject Json(RewireResult result) =>
        new()
        {
            ["mistakes"] = result.Mistakes.Length,
            ["verdict"] = Word(result.Verdict),
            ["probable"] = new JsonArray([
                .. result.Probable.Select(h => new JsonObject { ["mistakes"] = Ids(h.Mistakes), ["probability"] = h.Probability }),
            ]),
            ["take"] = new JsonArray([
                .. result.ToRead.Select(t => new JsonObject
                {
                    ["id"] = t.Spec.Id,
                    ["minutes"] = t.Minutes,
                    ["tells"] = Ids(t.Discriminates),
                }),
            ]),
            ["untold"] = Ids(result.Undiscriminated),
            ["alike"] = new JsonArray([.. result.Alike.Select(g => Ids(g))]),
        };

    private static void Show(TypeSheet sheet, RewireResult result)
    {
        Console.WriteLine(Style.Heading(Shown.NameOf(sheet)));
        Console.WriteLine($"{Sentences.Large(Counted.Of(result.Mistakes.Length, "possible mistake"))} weighed.");
        Console.WriteLine();
        if (result.Probable.Length > 0)
        {
            Console.WriteLine(Style.Heading(Said(result.Verdict)));
            foreach (var h in result.Probable.Take(MostShown))
                Console.WriteLine(Shown.Row($"  {ValueText.Percent(h.Probability), 6}  ", MistakeWords.Of(h.Mistakes, sheet)));
            if (!result.Unexplained.IsEmpty)
                Console.WriteLine(
                    Shown.Wrapped(
                        $"No listed mistake explains this: {string.Join("; ", result.Unexplained.Select(r => PartNames.Reading(sheet, r.Id)))}. Read it again. If it stays, compare every wire with the record. Do not plug it in.",
                        2
                    )
                );
            if (result.Verdict == RewireVerdict.Mistake)
                Console.WriteLine(Shown.Wrapped("Do not plug it in. Repair it, then take these readings again.", 2));
            Console.WriteLine();
        }
        Console.WriteLine(Style.Heading("Readings to take, plug out or on the low-voltage supply"));
        // An id is typed as it is shown: never cut.
        var wide = result.ToRead.Select(t => t.Spec.Id.Length).DefaultIfEmpty().Max();
        foreach (var t in result.ToRead)
            Console.WriteLine(
                Shown.Row(
                    $"  {t.Spec.Id.PadRight(wide)} {t.Minutes.ToString("0.#", CultureInfo.InvariantCulture), 5} min  {Shown.Fit($"shows {Counted.Of(t.Discriminates.Length, "mistake")}", 20)} ",
                    PartNames.Reading(sheet, t.Spec.Id)
                )
            );
        Console.WriteLine();
        Console.WriteLine(Style.Heading("Not shown by these readings"));
        if (result.Undiscriminated.IsEmpty)
            Console.WriteLine("  Nothing: every listed mistake shows.");
        List(result.Undiscriminated, sheet);
        if (!result.Dangerous.IsEmpty)
        {
            Console.WriteLine();
            Console.WriteLine(Style.Heading("Look at these joints yourself"));
            Console.WriteLine("  They can put mains on a post or the core, or leave the breaker out. No reading shows it.");
            List(result.Dangerous, sheet);
        }
        Console.WriteLine();
        Console.WriteLine(
            Shown.Wrapped(
                "Low-voltage supply: about 12 V AC from an isolating transformer, fused at 0.5 A, on clips that cannot enter an outlet. Measure it on AC and on DC first, and enter its volts each time. Feed the plug, never a post: 12 V on a post can put over 200 V on the plug. Keep the plug in sight.",
                2
            )
        );
    }

    private static void List(IReadOnlyCollection<Mistake> mistakes, TypeSheet sheet)
    {
        foreach (var line in MistakeWords.Lines(mistakes, MostNamed, sheet))
            Console.WriteLine(Shown.Wrapped($"- {line}", 2));
    }
}
