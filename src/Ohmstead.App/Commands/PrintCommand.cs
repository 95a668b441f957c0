using System.CommandLine;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.App.Papers;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Commands;

/// <summary><c>print label|lesson|talk ZIP</c>: a paper of one unit out of a zip that was exported.</summary>
internal static class PrintCommand
{
    public static Command Make()
    {
        var what = new Argument<string>("PAPER") { Description = "label, lesson or talk.", HelpName = "label|lesson|talk" };
        what.AcceptOnlyFromAmong("label", "lesson", "talk");
        var zip = new Argument<string>("ZIP") { Description = "A zip written by ohmstead export." };
        var unit = new Option<string>("--unit")
        {
            Description = "The unit, by its tag.",
            HelpName = "TAG",
            Required = true,
        };
        var to = new Option<string>("--out")
        {
            Description = "The file to write: .png, .svg or .pdf for a label, .html for the others.",
            HelpName = "FILE",
            Required = true,
        };
        var json = CommonOptions.Json();
        var verb = new Verb(
            "print",
            "Print a unit’s label, or its repair as a lesson or a talk.",
            concernsMains: false,
            "ohmstead print label workshop.zip --unit 0412 --out 0412.pdf",
            "ohmstead print lesson workshop.zip --unit 0412 --out 0412.html --json"
        )
        {
            what,
            zip,
            unit,
            to,
            json,
        };
        verb.SetAction(
            (parsed, cancel) =>
                RunAsync(
                    parsed.GetValue(what)!,
                    parsed.GetValue(zip)!,
                    parsed.GetValue(unit)!,
                    parsed.GetValue(to)!,
                    parsed.GetValue(json),
                    cancel
                )
        );
        return verb;
    }

    private static async Task<int> RunAsync(string what, string zip, string tag, string to, bool asJson, CancellationToken cancel)
    {
        string[] endings = what == "label" ? [".png", ".svg", ".pdf"] : [".html"];
        var ending = Path.GetExtension(to).ToLowerInvariant();
        if (!endings.Contains(ending))
            throw new RefusedInput($"--out: “{to}” does not end in {string.Join(" or ", endings)}; a {what} is written as one of these");
        if (Directory.Exists(to))
            throw new RefusedInput($"--out: {to} is a folder; name a file");
        if (Path.GetDirectoryName(Path.GetFullPath(to)) is { } folder && !Directory.Exists(folder))
            throw new RefusedInput($"--out: there is no folder {folder}; make it first, or name another");
        var read = await ReadAsync(zip, tag, cancel);
        var sheet = read.SheetText is { } text ? TypeSheetFile.Read(text).Value : null;
        var (bytes, answer) = what == "label" ? OfLabel(read, sheet, ending) : OfLesson(read, sheet, what);
        WrittenFile.Write(to, bytes);
        if (asJson)
            Output.Print(answer);
        else
            Console.WriteLine($"{to}: {what} of unit {read.Unit.Card.Tag}");
        return ExitCode.Done;
    }

    private static async Task<ZipUnit> ReadAsync(string path, string tag, CancellationToken cancel)
    {
        if (!File.Exists(path))
            throw new RefusedInput($"{path}: no such file. Give the path of a zip.");
        await using var zip = File.OpenRead(path);
        var read = await ZipUnit.ReadAsync(zip, tag, new ZipLimits(), cancel);
        return read.Value ?? throw new RefusedInput([.. read.Problems.Select(p => $"{path}: {p}".ReplaceLineEndings(" "))]);
    }

    private static (byte[] Bytes, JsonObject Answer) OfLabel(ZipUnit read, TypeSheet? sheet, string ending)
    {
        var shop = ShopText.Read(read.ShopText);
        var last = read.Unit.Last.At.ToUniversalTime();
        var label = Label.Make(UnitJudge.Make(read.Unit, sheet, shop, last, _ => false), read.RecordSha256);
        var bytes = ending switch
        {
            ".pdf" => LabelPdf.Write(label, last),
            ".svg" => Encoding.UTF8.GetBytes(LabelSvg.Write(label)),
            _ => LabelPng.Write(label),
        };
        return (bytes, new JsonObject { ["text"] = label.Code, ["recordSha256"] = read.RecordSha256 });
    }

    private static (byte[] Bytes, JsonObject Answer) OfLesson(ZipUnit read, TypeSheet? sheet, string what)
    {
        var lesson = Lesson.Of(read.Unit);
        var html = what == "lesson" ? LessonHtml.Lesson(read, sheet, lesson) : LessonHtml.Talk(read, sheet, lesson);
        return (
            Encoding.UTF8.GetBytes(html),
            new JsonObject
            {
                ["steps"] = new JsonArray([
                    .. lesson.Steps.Select(s => new JsonObject
                    {
                        ["step"] = s.Step,
                        ["done"] = s.IsOff ? "off" : "back",
                        ["minutes"] = s.Minutes,
                        ["photos"] = s.Photos.Length,
                    }),
                ]),
                ["minutes"] = lesson.Minutes,
                ["pauses"] = lesson.Pauses,
            }
        );
    }
}
