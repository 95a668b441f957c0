using System.CommandLine;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Drafting;
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
        var file = new Option<string?>("--sheet") { Description = "Write the type sheet to this file.", HelpName = "FILE" };
        var verb = new Verb("draft", "Make a type sheet from an outline of a unit.",
            "ohmstead draft my.outline.json",
            "ohmstead draft my.outline.json --sheet my.sheet.json")
        {
            outline, file, json,
        };
        verb.SetAction(parsed =>
        {
            var draft = Drafter.Run(InputFiles.Outline(parsed.GetValue(outline)!));
            if (parsed.GetValue(file) is { } path) TextFile.Write(path, TypeSheetFile.Write(draft.Sheet));
            if (parsed.GetValue(json)) Output.Print(Json(draft));
            else Show(draft);
            return ExitCode.Done;
        });
        return verb;
    }

    private static JsonObject Json(Draft draft) => new()
    {
        ["outline"] = draft.Kind.Outline.Id,
        ["sheet"] = draft.Sheet.Document.DeepClone(),
        ["values"] = new JsonArray([.. draft.Values.Select(v => new JsonObject
        {
            ["path"] = v.Path, ["value"] = v.Value, ["relativeError"] = v.RelativeError, ["origin"] = Word(v.Origin), ["from"] = Output.Words(v.From),
        })]),
        ["faults"] = new JsonArray(),
        ["setAside"] = new JsonArray(),
        ["candidates"] = new JsonArray([.. draft.Candidates.Select(c => new JsonObject
        {
            ["id"] = c.Kind.Id,
            ["choices"] = new JsonObject(c.Kind.Choices.Select(w => KeyValuePair.Create(w.Key, (JsonNode?)JsonValue.Create(w.Value)))),
            ["probability"] = c.Probability,
        })]),
        ["tells"] = new JsonArray(),
        ["wants"] = new JsonArray([.. draft.Wants.Select(w => new JsonObject
        {
            ["id"] = w.Spec.Id, ["minutes"] = w.Minutes, ["fixes"] = Output.Words(w.Fixes), ["relativeErrorAfter"] = w.RelativeErrorAfter,
        })]),
    };

    private static string Word(Origin origin) => origin switch
    {
        Origin.Stated => "stated", Origin.Measured => "measured", Origin.Derived => "derived", _ => "assumed",
    };

    private static void Show(Draft draft)
    {
        Console.WriteLine(Style.Heading(Shown.NameOf(draft.Sheet)));
        Console.WriteLine(Shown.Wrapped($"Drafted: {Counted.Of(draft.Sheet.Elements.Length, "part")}, {Counted.Of(draft.Sheet.Readings.Length, "reading")}. {string.Join(", ", draft.Values.CountBy(v => v.Origin).OrderBy(g => g.Key).Select(g => $"{Counted.Of(g.Value, "number")} {Word(g.Key)}"))}.", 0));
        if (draft.Candidates.Length > 1)
        {
            Console.WriteLine();
            Console.WriteLine(Style.Heading($"It could be any of {Counted.Of(draft.Candidates.Length, "type")}"));
            foreach (var (kind, probability) in draft.Candidates)
                Console.WriteLine(Shown.Row($"  {ValueText.Percent(probability),6}  ", string.Join(", ", kind.Choices.Select(c => $"{c.Key}: {c.Value}"))));
        }
        Console.WriteLine();
        Console.WriteLine(Style.Heading("Take these first"));
        foreach (var w in draft.Wants) Console.WriteLine(Shown.Row($"  {w.Minutes.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture),4} min  ", PartNames.Reading(draft.Sheet, w.Spec.Id)));
        if (draft.Wants.IsEmpty) Console.WriteLine("  None: readings would tell nothing more.");
    }
}
