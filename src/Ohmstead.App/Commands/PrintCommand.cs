using System.CommandLine;
using System.Text;
using System.Text.Json.Nodes;
using Ohmstead.App.Papers;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Commands;

/// <summary><c>print label|lesson|talk|owner-page ZIP</c>: a paper of one unit out of a zip that was exported.</summary>
internal static class PrintCommand
{
    public static Command Make()
    {
        var what = new Argument<string>("PAPER")
        {
            Description = "label, lesson, talk or owner-page.",
            HelpName = "label|lesson|talk|owner-page",
        };
        what.AcceptOnlyFromAmong("label", "lesson", "talk", OwnerPage.Id);
        var zip = new Argument<string>("ZIP") { Description = "A zip written by ohmstead export." };
        var unit = new Option<string>("--unit")
        {
            Description = "The unit, by its tag.",
            HelpName = "TAG",
            Required = true,
        };
        var to = new Option<string>("--out")
        {
            Description = "The file to write: .png, .svg or .pdf for a label, .pdf for an owner’s page, .html for the others.",
            HelpName = "FILE",
            Required = true,
        };
        var language = new Option<string?>("--language")
        {
            Description = "The owner’s page in this language: deutsch, or your own words file.",
            HelpName = "deutsch|FILE",
        };
        var json = CommonOptions.Json();
        var verb = new Verb(
            "print",
            "Print a unit’s label or owner’s page, or its repair as a lesson or a talk.",
            concernsMains: false,
            "ohmstead print label workshop.zip --unit 0412 --out 0412.pdf",
            "ohmstead print lesson workshop.zip --unit 0412 --out 0412.html --json",
            "ohmstead print owner-page workshop.zip --unit 0412 --out 0412.pdf --language deutsch"
        )
        {
            what,
            zip,
            unit,
            to,
            language,
            json,
        };
        verb.SetAction(
            (parsed, cancel) =>
                RunAsync(
                    new(
                        parsed.GetValue(what)!,
                        parsed.GetValue(zip)!,
                        parsed.GetValue(unit)!,
                        parsed.GetValue(to)!,
                        parsed.GetValue(language)
                    ),
                    parsed.GetValue(json),
                    cancel
                )
        );
        return verb;
    }

    private static async Task<int> RunAsync(Asked asked, bool asJson, CancellationToken cancel)
    {
        var (what, zip, tag, to, language) = asked;
        string[] endings =
            what == "label" ? [".png", ".svg", ".pdf"]
            : what == OwnerPage.Id ? [".pdf"]
            : [".html"];
        var ending = Path.GetExtension(to).ToLowerInvariant();
        if (!endings.Contains(ending))
            throw new RefusedInput($"--out: “{to}” does not end in {string.Join(" or ", endings)}; a {what} is written as one of these");
        if (Directory.Exists(to))
            throw new RefusedInput($"--out: {to} is a folder; name a file");
        if (Path.GetDirectoryName(Path.GetFullPath(to)) is { } folder && !Directory.Exists(folder))
            throw new RefusedInput($"--out: there is no folder {folder}; make it first, or name another");
        if (language is not null && what != OwnerPage.Id)
            throw new RefusedInput($"--language: a {what} has no second language; leave it out");
        var second = language is null ? null : Language(language);
        var read = await ReadAsync(zip, tag, cancel);
        if (read.Unit.IsPractice)
            throw new RefusedInput($"--unit: {tag} is a practice unit; print a real one");
        var sheet = read.SheetText is { } text ? TypeSheetFile.Read(text).Value : null;
        var (bytes, answer) =
            what == "label" ? OfLabel(read, sheet, ending)
            : what == OwnerPage.Id ? OfOwnerPage(read, sheet, second)
            : OfLesson(read, sheet, what);
        WrittenFile.Write(to, bytes);
        if (asJson)
            Output.Print(answer);
        else
            Console.WriteLine($"{to}: {(what == OwnerPage.Id ? "owner’s page" : what)} of unit {read.Unit.Card.Tag}");
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

    private static PageLanguage Language(string named)
    {
        if (PageLanguage.OfCarried(named) is { } carried)
            return carried;
        var file = PageLanguageFile.Read(Path.GetFileNameWithoutExtension(named), TextFile.Read(named));
        return file.Value ?? throw new RefusedInput([.. file.Problems.Select(p => $"{named}: {p}")]);
    }

    private static (byte[] Bytes, JsonObject Answer) OfOwnerPage(ZipUnit read, TypeSheet? sheet, PageLanguage? language)
    {
        var last = read.Unit.Last.At.ToUniversalTime();
        var matter = UnitJudge.Make(read.Unit, sheet, ShopText.Read(read.ShopText), last) with
        {
            Dated = KindDates.Read(read.DatesText ?? "") is { } dates ? DatedUnit.Of(read.Unit, dates, last.Year) : null,
        };
        var paper = language is null
            ? PaperFiles.OnePage(PaperTable.All.Single(p => p.Id == OwnerPage.Id), matter)
            : PaperFiles.OnePage(matter, language);
        var missing = language is null ? [] : OwnerPage.Missing(matter, language);
        foreach (var key in missing)
            Console.Error.WriteLine($"{language!.Id}: has no line for “{key}”; it stays English");
        return (
            PaperPdf.Write(paper, matter.Shop.Paper, new Dictionary<string, byte[]>(), last),
            new JsonObject { ["language"] = paper.Language, ["missing"] = new JsonArray([.. missing.Select(k => (JsonNode)k)]) }
        );
    }

    private static (byte[] Bytes, JsonObject Answer) OfLabel(ZipUnit read, TypeSheet? sheet, string ending)
    {
        var last = read.Unit.Last.At.ToUniversalTime();
        var label = Label.Make(UnitJudge.Make(read.Unit, sheet, ShopText.Read(read.ShopText), last, _ => false), read.RecordSha256);
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

    /// <summary>What is printed, of which unit, where to, and in which language; null for English.</summary>
    private sealed record Asked(string What, string Zip, string Tag, string To, string? Language);
}
