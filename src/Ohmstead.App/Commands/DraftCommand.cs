using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>draft OUTLINE</c>: a whole type sheet from what can be seen of a unit.</summary>
internal static class DraftCommand
{
    public static Command Make()
    {
        var json = CommonOptions.Json();
        var outline = new Argument<string>("OUTLINE") { Description = "What can be seen of the unit: plate, posts, levers (JSON)." };
        var readings = new Argument<string[]>("READINGS")
        {
            Description = "Readings files, one for each unit (JSON).",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var file = new Option<string?>("--sheet") { Description = "Write the type sheet to this file.", HelpName = "FILE" };
        var verb = new Verb(
            "draft",
            "Make a type sheet from an outline of a unit, and from readings.",
            concernsMains: true,
            "ohmstead draft my.outline.json                     what to read first",
            "ohmstead draft my.outline.json unit-1.readings.json --sheet my.sheet.json"
        )
        {
            outline,
            readings,
            file,
            json,
        };
        verb.SetAction(parsed =>
        {
            var files = parsed.GetValue(readings) ?? [];
            var from = parsed.GetValue(outline)!;
            var draft = Drafter.Run(
                InputFiles.KindReadings(from, TextFile.Read(from), files),
                new DiagnosisOptions { Threads = Environment.ProcessorCount }
            );
            if (parsed.GetValue(file) is { } path)
                WrittenFile.Write(path, Encoding.UTF8.GetBytes(TypeSheetFile.Write(draft.Sheet)));
            if (parsed.GetValue(json))
                Output.Print(Json(draft, files));
            else
                Show(draft);
            return ExitCode.Done;
        });
        return verb;
    }

    private static JsonObject Json(Draft draft, string[] files) =>
        new()
        {
            ["outline"] = draft.Kind.Outline.Id,
            ["sheet"] = TypeSheetFile.JsonOf(draft.Sheet),
            ["values"] = new JsonArray([
                .. draft.Values.Select(v => new JsonObject
                {
                    ["path"] = v.Path,
                    ["value"] = v.Value,
                    ["relativeError"] = v.RelativeError,
                    ["origin"] = Word(v.Origin),
                    ["from"] = Output.Words(v.From),
                }),
            ]),
            ["faults"] = new JsonArray([
                .. draft.Units.SelectMany(
                    (u, n) =>
                        u.Sets.Select(s => new JsonObject
                        {
                            ["file"] = files[n],
                            ["faults"] = Output.Words(s.Faults.Select(Written)),
                            ["probability"] = s.Probability,
                        })
                ),
            ]),
            ["setAside"] = new JsonArray([
                .. draft.Units.SelectMany(
                    (u, n) =>
                        u.SetAside.Select(r => new JsonObject
                        {
                            ["file"] = files[n],
                            ["id"] = r.Spec.Id,
                            ["measured"] = r.IsOverRange ? JsonValue.Create("OL") : Output.Optional(r.Measured),
                            ["expected"] = r.Expected is { } e ? Output.Value(e) : null,
                        })
                ),
            ]),
            ["candidates"] = Candidates(draft.Candidates),
            ["tells"] = new JsonArray([
                .. draft.Discriminating.Select(t => new JsonObject
                {
                    ["id"] = t.Id,
                    ["bits"] = t.Bits,
                    ["minutes"] = t.Minutes,
                    ["between"] = Output.Words(t.Between),
                }),
            ]),
            ["wants"] = new JsonArray([
                .. draft.Wants.Select(w => new JsonObject
                {
                    ["id"] = w.Spec.Id,
                    ["minutes"] = w.Minutes,
                    ["fixes"] = Output.Words(w.Fixes),
                    ["relativeErrorAfter"] = w.RelativeErrorAfter,
                }),
            ]),
            ["assumed"] = Output.Words(draft.Kind.Outline.LeftOut),
        };

    /// <summary>The kinds that an outline may stand for.</summary>
    public static JsonArray Candidates(ImmutableArray<(OutlineKind Kind, double Probability)> candidates) =>
        new([
            .. candidates.Select(c => new JsonObject
            {
                ["id"] = c.Kind.Id,
                ["choices"] = new JsonObject(c.Kind.Choices.Select(w => KeyValuePair.Create(w.Key, (JsonNode?)JsonValue.Create(w.Value)))),
                ["probability"] = c.Probability,
            }),
        ]);

    private static string Written(Fault fault) =>
        fault.Mode.Size == SizeKind.None
            ? fault.Mode.Name
            : string.Create(CultureInfo.InvariantCulture, $"{fault.Mode.Name}={fault.Size:G4}");

    private static string Word(Origin origin) =>
        origin switch
        {
            Origin.Stated => "stated",
            Origin.Measured => "measured",
            Origin.Derived => "derived",
            _ => "assumed",
        };

    private static void Show(Draft draft)
    {
        Console.WriteLine(Style.Heading(Shown.NameOf(draft.Sheet)));
        Console.WriteLine(
            Shown.Wrapped(
                $"Drafted: {Counted.Of(draft.Sheet.Elements.Length, "part")}, {Counted.Of(draft.Sheet.Readings.Length, "reading")}. {string.Join(", ", draft.Values.CountBy(v => v.Origin).OrderBy(g => g.Key).Select(g => $"{Counted.Of(g.Value, "number")} {Word(g.Key)}"))}.",
                0
            )
        );
        if (draft.Candidates.Length > 1)
        {
            Console.WriteLine();
            Console.WriteLine(Style.Heading($"It could be any of {Counted.Of(draft.Candidates.Length, "type")}"));
            foreach (var (kind, probability) in draft.Candidates)
                Console.WriteLine(Shown.Row($"  {ValueText.Percent(probability), 6}  ", Shown.Choices(kind)));
        }
        if (!draft.Kind.Outline.LeftOut.IsEmpty)
            Console.WriteLine(
                Shown.Wrapped($"Not in the outline, so the usual is taken: {string.Join(", ", draft.Kind.Outline.LeftOut)}.", 0)
            );
        ShowUnits(draft);
        Console.WriteLine();
        Console.WriteLine(Style.Heading(draft.Units.IsEmpty ? "Take these first" : "Readings that would say most about this type"));
        foreach (var w in draft.Wants)
            Console.WriteLine(
                Shown.Row(
                    $"  {w.Minutes.ToString("0.#", CultureInfo.InvariantCulture), 4} min  ",
                    PartNames.Reading(draft.Sheet, w.Spec.Id)
                )
            );
        if (draft.Wants.IsEmpty)
            Console.WriteLine("  None: no reading would say more.");
    }

    private static void ShowUnits(Draft draft)
    {
        foreach (var (unit, n) in draft.Units.Select((u, n) => (u, n)))
        {
            Console.WriteLine();
            Console.WriteLine(Style.Heading($"Unit {(n + 1).ToString(CultureInfo.InvariantCulture)}: likely faults"));
            foreach (var (faults, probability) in unit.Sets)
                Console.WriteLine(
                    Shown.Row(
                        $"  {ValueText.Percent(probability), 6}  ",
                        faults.IsEmpty ? "nothing wrong" : string.Join("; ", faults.Select(f => PartNames.Fault(draft.Sheet, f.Mode)))
                    )
                );
            foreach (var r in unit.SetAside)
                Console.WriteLine(
                    Shown.Wrapped($"Set aside, nothing explains it. Read it again: {PartNames.Reading(draft.Sheet, r.Spec.Id)}", 2)
                );
        }
    }
}
