using System.CommandLine;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary><c>reckon QUESTION</c>: one question of the bench answered from a file.</summary>
internal static class ReckonCommand
{
    public static Command Make()
    {
        var question = new Argument<string>("QUESTION") { Description = "The question: what is asked, and the figures for it (JSON)." };
        var sheet = new Option<string?>("--sheet")
        {
            Description = "The type sheet, where the question needs one (JSON).",
            HelpName = "SHEET",
        };
        var (unit, json) = (CommonOptions.Unit(), CommonOptions.Json());
        var verb = new Verb(
            "reckon",
            "Answer one question: a limit, a load, a heat run, a breaker, and so on.",
            concernsMains: true,
            "ohmstead reckon regulation.question.json",
            "ohmstead reckon disc.question.json --sheet my.sheet.json --unit unit-7.unit.json --json"
        )
        {
            question,
            sheet,
            unit,
            json,
        };
        verb.SetAction(parsed =>
            Run(parsed.GetValue(question)!, Sheet(parsed.GetValue(sheet), parsed.GetValue(unit)), parsed.GetValue(json))
        );
        return verb;
    }

    private static TypeSheet? Sheet(string? sheet, string? unit) =>
        sheet is not null ? InputFiles.Sheet(sheet, unit)
        : unit is null ? null
        : throw new RefusedInput("--unit: a unit file changes a type sheet; give that too, with --sheet FILE");

    private static int Run(string path, TypeSheet? sheet, bool asJson)
    {
        var read = QuestionFile.Read(TextFile.Read(path), sheet);
        if (read.Question is not { } question)
            throw InputFiles.Refuse(path, read.Problems);
        foreach (var remark in read.Remarks)
            Console.Error.WriteLine($"{path}: {remark.ToString().ReplaceLineEndings(" ")}");
        var answer = question.Answer().ToJson(read.Word);
        if (asJson)
            Output.Print(answer);
        else
            foreach (var line in AnswerTable.Of(answer, sheet))
                Console.WriteLine(line);
        return ExitCode.Done;
    }
}
