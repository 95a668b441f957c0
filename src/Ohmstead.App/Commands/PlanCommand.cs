using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary><c>plan SHEET --reach ID</c>: the cheapest way to a part of the unit.</summary>
internal static class PlanCommand
{
    public static Command Make()
    {
        var (sheet, json) = (CommonOptions.Sheet(), CommonOptions.Json());
        var reach = new Option<string>("--reach")
        {
            Description = "What to get to: ids of take-apart steps, commas between.",
            HelpName = "ID[,ID…]",
            Required = true,
        };
        var rate = new Option<double>("--rate")
        {
            Description = "What an hour at the bench costs.",
            HelpName = "MONEY_PER_HOUR",
            DefaultValueFactory = _ => TakeApartPlanner.UsualRate,
        };
        var verb = new Verb(
            "plan",
            "Steps and cost to get to a part, and what may break.",
            concernsMains: true,
            "ohmstead plan my.sheet.json --reach disc-left-out",
            "ohmstead plan my.sheet.json --reach roller-left-out,cord --rate 40 --json"
        )
        {
            sheet,
            reach,
            rate,
            json,
        };
        verb.SetAction(parsed =>
        {
            var read = InputFiles.Sheet(parsed.GetValue(sheet)!, null);
            var plan = Make(read, parsed.GetValue(reach)!, parsed.GetValue(rate));
            if (parsed.GetValue(json))
                Output.Print(Json(plan));
            else
                Show(read, plan);
            return ExitCode.Done;
        });
        return verb;
    }

    private static TakeApartPlan Make(TypeSheet sheet, string reach, double rate)
    {
        if (!double.IsFinite(rate) || rate < 0)
            throw new RefusedInput("--rate: must be 0 or more: what an hour costs");
        var ids = reach.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (sheet.TakeApart.IsEmpty)
            throw new RefusedInput($"The sheet \"{sheet.Id}\" has no take-apart steps");
        if (ids.Length == 0)
            throw new RefusedInput($"--reach: name a step of the sheet: {Names(sheet)}");
        if (ids.FirstOrDefault(id => sheet.TakeApart.All(s => s.Id != id)) is { } unknown)
            throw new RefusedInput($"--reach: \"{unknown}\" is no step of the sheet. Its steps: {Names(sheet)}");
        return TakeApartPlanner.Plan(sheet.TakeApart, ids, rate);
    }

    private static string Names(TypeSheet sheet) => string.Join(", ", sheet.TakeApart.Select(s => s.Id));

    private static JsonObject Json(TakeApartPlan plan) =>
        new()
        {
            ["steps"] = Output.Words(plan.Steps.Select(s => s.Id)),
            ["minutesOut"] = plan.MinutesOut,
            ["minutesIn"] = plan.MinutesIn,
            ["breakPercent"] = plan.BreakPercent,
            ["expectedCost"] = plan.ExpectedCost,
            ["lowerBound"] = plan.LowerBound,
            ["onTheWay"] = new JsonArray([
                .. plan.OnTheWay.Select(s => new JsonObject
                {
                    ["id"] = s.Step.Id,
                    ["extraMinutes"] = s.ExtraMinutes,
                    ["extraCost"] = s.ExtraCost,
                }),
            ]),
        };

    private static void Show(TypeSheet sheet, TakeApartPlan plan)
    {
        Console.WriteLine(Style.Heading(Shown.NameOf(sheet)));
        Console.WriteLine(
            $"{Counted.Of(plan.Steps.Length, "step")}: {Plain(plan.MinutesOut)} min out, {Plain(plan.MinutesIn)} min back in. Something breaks in {Of100(plan.BreakPercent)} of 100 such jobs."
        );
        Console.WriteLine(
            plan.IsProved
                ? $"Expected cost {Money(plan.ExpectedCost)}. No other order is cheaper."
                : $"Expected cost {Money(plan.ExpectedCost)}. A cheaper order may exist, but none below {Money(plan.LowerBound)}."
        );
        Console.WriteLine();
        Console.WriteLine(Style.Heading($"  {"take off", -46} {"min out", 8} {"min in", 7} {"breaks", 8}  have a spare ready"));
        foreach (var (s, n) in plan.Steps.Select((s, n) => (s, n)))
            Console.WriteLine(Line($"{Plain(n + 1), 2}  {PartNames.Step(sheet, s.Id)}", s));
        Console.WriteLine();
        foreach (var caution in CautionTable.For(Act.TakeOff).Concat(plan.Steps.SelectMany(s => CautionTable.OfStep(sheet, s)).Distinct()))
            Console.WriteLine(Shown.Wrapped($"CAUTION: {caution}", 0));
        if (plan.OnTheWay.Length == 0)
            return;
        Console.WriteLine();
        Console.WriteLine(Style.Heading($"  {"you can get to these too", -46} {"more min", 8} {"more cost", 10}"));
        foreach (var s in plan.OnTheWay)
            Console.WriteLine($"  {Shown.Fit(PartNames.Step(sheet, s.Step.Id), 46)} {Minutes(s.ExtraMinutes), 8} {Money(s.ExtraCost), 10}");
    }

    private static string Line(string title, TakeApartStep s)
    {
        var spare = s.BreakPercent > 0 && s.Price > 0 ? Money(s.Price) : "";
        return $"  {Shown.Fit(title, 46)} {Minutes(s.MinutesOut), 8} {Minutes(s.MinutesIn), 7} {Plain(s.BreakPercent), 6} %  {spare, 12}".TrimEnd();
    }

    private static string Minutes(double minutes) => minutes.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Money(double sum) => sum.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Of100(double percent) =>
        percent is > 0 and < 1 ? "fewer than 1" : percent.ToString("0", CultureInfo.InvariantCulture);

    private static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
