using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>continuity SHEET</c>: the ohmmeter checks that prove the wiring of the open unit.</summary>
internal static class ContinuityCommand
{
    public static Command Make()
    {
        var (sheet, unit, json) = (CommonOptions.Sheet(), CommonOptions.Unit(), CommonOptions.Json());
        var controls = new Option<string>("--controls")
        {
            Description = "Controls that are not at rest: a throttle from 0 to 1, a switch by the name of its position.",
            HelpName = "ID=POSITION[,ID=POSITION…]",
            DefaultValueFactory = _ => "",
        };
        var verb = new Verb(
            "continuity",
            "Continuity check: list the ohmmeter checks of the open, unplugged unit.",
            concernsMains: true,
            "ohmstead continuity my.sheet.json",
            "ohmstead continuity my.sheet.json --unit this.unit.json --controls throttle=0.5 --json"
        )
        {
            sheet,
            unit,
            controls,
            json,
        };
        verb.SetAction(parsed =>
        {
            var planned = InputFiles.Sheet(parsed.GetValue(sheet)!, parsed.GetValue(unit));
            if (PlanningBound.RefuseContinuity(planned) is { Length: > 0 } refused)
                throw new RefusedInput($"{parsed.GetValue(sheet)}: {refused}");
            var plan = ContinuityPlanner.Plan(planned, Controls(planned, parsed.GetValue(controls)!), Meter.Usual);
            if (parsed.GetValue(json))
                Output.Print(Json(plan));
            else
                Show(planned, plan);
            return ExitCode.Done;
        });
        return verb;
    }

    private static ImmutableDictionary<string, ControlPosition> Controls(TypeSheet sheet, string text)
    {
        var positions = ImmutableDictionary.CreateBuilder<string, ControlPosition>(StringComparer.Ordinal);
        foreach (var word in text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var cut = word.IndexOf('=', StringComparison.Ordinal);
            if (cut < 1)
                throw new RefusedInput($"--controls: \"{word}\": write ID=POSITION, as in throttle=0.5");
            var (id, position) = (word[..cut], word[(cut + 1)..]);
            if (sheet.Controls.FirstOrDefault(c => c.Id == id) is not { } control)
                throw new RefusedInput(
                    $"--controls: \"{id}\" is no control of the sheet: {Names.Like(id, sheet.Controls.Select(c => c.Id))}"
                );
            positions[id] = Position(control, position);
        }
        return positions.ToImmutable();
    }

    private static ControlPosition Position(Control control, string text)
    {
        if (!control.IsThrottle)
            return control.Positions.Contains(text, StringComparer.Ordinal)
                ? new(0, text)
                : throw new RefusedInput($"--controls: {control.Id} has no position \"{text}\": {string.Join(", ", control.Positions)}");
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var at) && at is >= 0 and <= 1
            ? new(at, "")
            : throw new RefusedInput($"--controls: {control.Id} is a throttle: give a number from 0 to 1, not \"{text}\"");
    }

    private static JsonObject Json(ContinuityPlan plan) =>
        new()
        {
            ["checks"] = new JsonArray([
                .. plan.Checks.Select(c => new JsonObject
                {
                    ["kind"] = Kind(c),
                    ["terminals"] = new JsonArray(Output.Words(c.First), Output.Words(c.Second)),
                    ["ohms"] = Output.Value(c.Ohms),
                    ["minutes"] = c.Minutes,
                }),
            ]),
            ["pairs"] = plan.Pairs,
            ["leftToOthers"] = new JsonArray([.. plan.LeftToOthers.Select(g => Output.Words(g))]),
        };

    private static string Kind(ContinuityCheck check) => check.IsJoined ? "joined" : "apart";

    private static void Show(TypeSheet sheet, ContinuityPlan plan)
    {
        Console.WriteLine(Style.Heading(Shown.NameOf(sheet)));
        Console.WriteLine(
            Shown.Wrapped(
                $"{Sentences.Large(Counted.Of(plan.Checks.Length, "check"))}, about {Plain(Math.Ceiling(plan.Minutes))} min, for {Counted.Of(plan.Pairs, "pair")} of terminals. Unplug it. Keep the plug in sight. Cover off.",
                0
            )
        );
        Console.WriteLine();
        Console.WriteLine(Style.Heading($"      {"should be", -10} {"wired right", 12}  test leads on"));
        foreach (var (c, n) in plan.Checks.Select((c, n) => (c, n)))
        {
            var begin =
                $"{Plain(n + 1), 4}  {(c.IsJoined ? "joined" : "not joined"), -10} {(double.IsPositiveInfinity(c.Ohms) ? "OL" : Plain(c.Ohms) + " Ω"), 12}  ";
            if (c.First.Length + c.Second.Length == 2)
                Console.WriteLine($"{begin}{PartNames.Terminal(sheet, c.First[0])} – {PartNames.Terminal(sheet, c.Second[0])}");
            else
            {
                Console.WriteLine($"{begin}one lead on all of");
                Console.WriteLine(Shown.Wrapped(PartNames.Terminals(sheet, c.First), 8));
                Console.WriteLine("      the other on all of");
                Console.WriteLine(Shown.Wrapped(PartNames.Terminals(sheet, c.Second), 8));
            }
        }
        Console.WriteLine();
        Console.WriteLine(Style.Heading("Not shown by these checks, but by the low-voltage readings: which of these is which"));
        if (plan.LeftToOthers.IsEmpty)
            Console.WriteLine("  Nothing.");
        foreach (var group in plan.LeftToOthers)
            Console.WriteLine(Shown.Wrapped($"  {PartNames.Terminals(sheet, group)}", 2));
    }

    private static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
