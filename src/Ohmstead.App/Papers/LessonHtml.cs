using System.Globalization;
using System.Net;
using System.Text;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Papers;

/// <summary>
/// A repair as one page to learn from, or as pages for a club evening: no script, nothing from outside, photos inside. Never the
/// owner's name.
/// </summary>
internal static class LessonHtml
{
    private const string MainsKills = "Mains can kill. Pull the plug, and keep it in sight.";

    private const string LessonStyle = """
        body { font: 18px/1.5 sans-serif; color: #000; background: #fff; max-width: 46rem; margin: 0 auto; padding: 1rem; }
        h1 { font-size: 1.8rem; } h2 { font-size: 1.3rem; margin: 0 0 .3rem; }
        section { border-top: 2px solid #000; padding: .8rem 0; break-inside: avoid; }
        .caution { border: 3px solid #000; padding: .6rem; font-weight: bold; }
        img { max-width: 100%; max-height: 12cm; } figure { margin: .5rem 0; } p { margin: .2rem 0; }
        @page { margin: 15mm; } @media print { body { padding: 0; } }
        """;

    private const string TalkStyle = """
        body { font: 40px/1.35 sans-serif; color: #000; background: #fff; margin: 0; }
        h1, h2 { font-size: 56px; margin: 0 0 20px; } p { margin: 0 0 16px; }
        section { box-sizing: border-box; min-height: 100vh; padding: 48px; break-after: page; }
        .caution { border: 6px solid #000; padding: 24px; font-weight: bold; }
        img { max-width: 100%; max-height: 55vh; } figure { margin: 0; }
        nav { display: flex; justify-content: space-between; margin-top: 24px; } nav a { color: #000; padding: 12px 24px; border: 3px solid #000; text-decoration: none; }
        @media print { nav { display: none; } }
        """;

    /// <summary>Step by step on one page, to be read and printed.</summary>
    public static string Lesson(ZipUnit read, TypeSheet? sheet, Lesson lesson)
    {
        var page = Begin(read, sheet, LessonStyle);
        page.Append(
            CultureInfo.InvariantCulture,
            $"<h1>{Text(Title(read, sheet))}</h1>\n<p class=\"caution\">{MainsKills}</p>\n<p>{Text(Sum(lesson))}</p>\n"
        );
        foreach (var (step, n) in lesson.Steps.Select((s, n) => (s, n)))
            page.Append(CultureInfo.InvariantCulture, $"<section>\n{Step(read, sheet, step, n)}</section>\n");
        return page.Append(CultureInfo.InvariantCulture, $"<p>{CautionTable.LocalCodes}</p>\n</body>\n</html>\n").ToString();
    }

    /// <summary>One step a page in large letters; plain links turn the pages.</summary>
    public static string Talk(ZipUnit read, TypeSheet? sheet, Lesson lesson)
    {
        var page = Begin(read, sheet, TalkStyle);
        var last = lesson.Steps.Length;
        page.Append(
            CultureInfo.InvariantCulture,
            $"<section id=\"p0\">\n<p class=\"caution\">{MainsKills}</p>\n<h1>{Text(Title(read, sheet))}</h1>\n<p>{Text(Sum(lesson))}</p>\n{Turn(0, last)}</section>\n"
        );
        foreach (var (step, n) in lesson.Steps.Select((s, n) => (s, n)))
            page.Append(
                CultureInfo.InvariantCulture,
                $"<section id=\"p{n + 1}\">\n{Step(read, sheet, step, n)}{Turn(n + 1, last)}</section>\n"
            );
        return page.Append("</body>\n</html>\n").ToString();
    }

    private static StringBuilder Begin(ZipUnit read, TypeSheet? sheet, string style) =>
        new StringBuilder().Append(
            CultureInfo.InvariantCulture,
            $"<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>{Text(Title(read, sheet))}</title>\n<style>\n{style}\n</style>\n</head>\n<body>\n"
        );

    private static string Title(ZipUnit read, TypeSheet? sheet) =>
        $"Repair of unit {read.Unit.Card.Tag}{(sheet is { Title.Length: > 0 } ? $": {sheet.Title}" : "")}";

    private static string Sum(Lesson lesson) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Counted.Of(lesson.Steps.Length, "step")}, {lesson.Minutes:0.#} min. {(lesson.Pauses == 0 ? "No pause." : $"{Counted.Of(lesson.Pauses, "pause")} of more than 20 min not counted.")}"
        );

    private static string Step(ZipUnit read, TypeSheet? sheet, LessonStep step, int n)
    {
        var of = sheet?.TakeApart.FirstOrDefault(s => s.Id == step.Step);
        var title = of is { Title.Length: > 0 } ? of.Title : Sentences.Large(PartNames.Step(sheet, step.Step));
        var html = new StringBuilder().Append(
            CultureInfo.InvariantCulture,
            $"<h2>{n + 1}. {(step.IsOff ? "Take off" : "Put back")}: {Text(title)}</h2>\n"
        );
        List<string> facts =
        [
            step.Minutes is { } minutes ? string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min") : "After a pause",
        ];
        if (step.Cup > 0)
            facts.Add(string.Create(CultureInfo.InvariantCulture, $"cup {step.Cup}"));
        html.Append(CultureInfo.InvariantCulture, $"<p>{Text(string.Join(", ", facts))}</p>\n");
        if (step.IsOff && of is not null)
        {
            if (of.BreakPercent > 0)
                html.Append(CultureInfo.InvariantCulture, $"<p>Breaks in {of.BreakPercent:0.#} of 100 pulls.</p>\n");
            foreach (var caution in CautionTable.OfStep(sheet!, of))
                html.Append(CultureInfo.InvariantCulture, $"<p class=\"caution\">{Text(caution)}</p>\n");
            if (of.Trick.Length > 0)
                html.Append(CultureInfo.InvariantCulture, $"<p>{Text(of.Trick)}</p>\n");
        }
        if (step.Words.Length > 0)
            html.Append(CultureInfo.InvariantCulture, $"<p>“{Text(Bare(read, step.Words))}”</p>\n");
        foreach (var photo in step.Photos)
            html.Append(Picture(read, photo.Photo, Bare(read, photo.Title)));
        return html.ToString();
    }

    private static string Picture(ZipUnit read, string hash, string title) =>
        read.Photos.TryGetValue(hash, out var photo)
            ? $"<figure><img alt=\"{Text(title)}\" src=\"data:{photo.MediaType};base64,{Convert.ToBase64String(photo.Bytes)}\"><figcaption>{Text(title)}</figcaption></figure>\n"
            : $"<p>Photo missing: {Text(title)}</p>\n";

    private static string Turn(int at, int last) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"<nav>{(at > 0 ? $"<a href=\"#p{at - 1}\" rel=\"prev\">Back</a>" : "<span></span>")}{(at < last ? $"<a href=\"#p{at + 1}\" rel=\"next\">Next</a>" : "")}</nav>\n"
        );

    /// <summary>Words without the owner's name, should it stand in them.</summary>
    private static string Bare(ZipUnit read, string words) =>
        read.Unit.Card.Owner.Trim() is { Length: > 2 } owner
            ? words.Replace(owner, "the owner", StringComparison.OrdinalIgnoreCase)
            : words;

    private static string Text(string words) => WebUtility.HtmlEncode(words);
}
