using System.IO.Compression;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Tests.Commands;

/// <summary><c>print</c> as a process, from a zip of one repaired unit that was made elsewhere (tests/Reference/papers).</summary>
public sealed partial class PrintTests
{
    private static readonly string Zip = Path.Combine(Tool.Root, "tests/Reference/papers/papers.zip");

    private static readonly JsonElement Truth = JsonDocument
        .Parse(File.ReadAllText(Path.Combine(Tool.Root, "tests/Reference/papers/papers.truth.json")))
        .RootElement;

    private static string Out(string name) => Path.Combine(Directory.CreateTempSubdirectory("ohmstead-test-").FullName, name);

    [GeneratedRegex("(?i)https?:|//|<script|@import|url\\(|javascript")]
    private static partial Regex Outside();

    private static byte[] InZip(string name)
    {
        using var zip = ZipFile.OpenRead(Zip);
        using var from = zip.GetEntry(name)!.Open();
        using var to = new MemoryStream();
        from.CopyTo(to);
        return to.ToArray();
    }

    [Fact]
    public void The_steps_their_minutes_and_photos_are_those_that_were_worked_out_elsewhere()
    {
        var to = Out("lesson.html");
        var answer = Tool.Json("print", "lesson", Zip, "--unit", "0501", "--out", to);
        var (ours, expected) = (answer.List("steps"), Truth.List("steps"));
        Assert.Equal(expected.Length, ours.Length);
        foreach (var (own, step) in ours.Zip(expected))
        {
            Assert.Equal(
                (step.Text("step"), step.Text("done"), step.Number("photos")),
                (own.Text("step"), own.Text("done"), own.Number("photos"))
            );
            Assert.Equal(step.GetProperty("minutes").ValueKind, own.GetProperty("minutes").ValueKind);
            if (step.GetProperty("minutes").ValueKind == JsonValueKind.Number)
                Assert.Equal(step.Number("minutes"), own.Number("minutes"), 0.01);
        }
        Assert.Equal(Truth.Number("minutes"), answer.Number("minutes"), 0.01);
        Assert.Equal(Truth.Number("pauses"), answer.Number("pauses"));
    }

    [Theory]
    [InlineData("lesson")]
    [InlineData("talk")]
    public void The_page_is_whole_in_itself_escaped_and_without_the_owner(string what)
    {
        var to = Out("page.html");
        var (code, output, error) = Tool.Run("print", what, Zip, "--unit", "0501", "--out", to);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains(to, output, StringComparison.Ordinal);
        var html = File.ReadAllText(to);
        Assert.DoesNotMatch(Outside(), Regex.Replace(html, "data:image/[a-z]+;base64,[A-Za-z0-9+/=]+", ""));
        Assert.Equal(Truth.Number("photos"), Regex.Count(html, "src=\"data:image/"));
        Assert.DoesNotContain("Brass", html, StringComparison.Ordinal);
        Assert.Contains("off &lt;&amp;&gt;", html, StringComparison.Ordinal);
        Assert.Contains("held &quot;tight&quot;", html, StringComparison.Ordinal);
        var sheet = TypeSheetFile.Read(Encoding.UTF8.GetString(InZip("documents/001.json"))).Required;
        foreach (var step in Truth.List("steps"))
            Assert.Contains(
                WebUtility.HtmlEncode(sheet.TakeApart.Single(s => s.Id == step.Text("step")).Title),
                html,
                StringComparison.Ordinal
            );
        var body = html[html.IndexOf("<body>", StringComparison.Ordinal)..];
        var first = body.IndexOf("Mains can kill", StringComparison.Ordinal);
        Assert.True(first > 0 && first < body.IndexOf("<h2>", StringComparison.Ordinal));
    }

    [Fact]
    public void A_talk_has_one_step_a_page_in_letters_of_40_and_links_that_turn_it()
    {
        var to = Out("talk.html");
        Tool.Json("print", "talk", Zip, "--unit", "0501", "--out", to);
        var html = File.ReadAllText(to);
        Assert.Equal(Truth.List("steps").Length + 1, Regex.Count(html, "<section"));
        Assert.Contains("font: 40px", html, StringComparison.Ordinal);
        Assert.All(
            Regex
                .Matches(html, "font-size: (\\d+)px")
                .Select(m => int.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)),
            size => Assert.True(size >= 40)
        );
        Assert.Contains("href=\"#p1\"", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(".png", "\u0089PNG")]
    [InlineData(".svg", "<svg")]
    [InlineData(".pdf", "%PDF")]
    public void A_label_s_text_says_which_record_it_is_of(string ending, string begin)
    {
        var to = Out("label" + ending);
        var answer = Tool.Json("print", "label", Zip, "--unit", "0501", "--out", to);
        var hash = Convert.ToHexStringLower(SHA256.HashData(InZip($"units/{Truth.Text("unit")}.json")));
        Assert.Equal(hash, answer.Text("recordSha256"));
        var lines = answer.Text("text").Split('\n');
        Assert.Equal(("OHMSTEAD 1", "0501 twin-160", "tests recorded, no certification"), (lines[0], lines[1], lines[^1]));
        Assert.Contains($"record {hash[..16]}", lines);
        // Put together, and never read: it is not to be plugged in.
        Assert.Equal("DO NOT PLUG IN: Cold checks not done", lines[2]);
        Assert.Contains("read 0 of 42", lines);
        Assert.Contains($"tested {Truth.Text("lastDate")}", lines);
        Assert.DoesNotContain("Brass", answer.Text("text"), StringComparison.Ordinal);
        Assert.StartsWith(begin, Encoding.Latin1.GetString(File.ReadAllBytes(to)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lesson", "0999", "x.html", "has no unit with the tag 0999")]
    [InlineData("label", "0999", "x.pdf", "has no unit with the tag 0999")]
    [InlineData("label", "0501", "x.html", "does not end in .png or .svg or .pdf")]
    [InlineData("lesson", "0501", "x.pdf", "does not end in .html")]
    [InlineData("talk", "0501", "nowhere/x.html", "--out: there is no folder ")]
    [InlineData("owner-page", "0501", "x.html", "does not end in .pdf")]
    public void What_cannot_be_printed_is_refused_and_nothing_is_written(string what, string tag, string name, string said)
    {
        var to = Out(name);
        var (code, output, error) = Tool.Run("print", what, Zip, "--unit", tag, "--out", to);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(said, error, StringComparison.Ordinal);
        Assert.False(File.Exists(to));
    }

    /// <summary>The unit of the zip was never read: its page forbids the plug, in both languages.</summary>
    [Fact]
    public void An_owners_page_is_printed_in_another_language_and_says_what_stays_english()
    {
        var to = Out("owner.pdf");
        var answer = Tool.Json("print", "owner-page", Zip, "--unit", "0501", "--out", to, "--language", "deutsch");
        Assert.Equal("de", answer.Text("language"));
        Assert.StartsWith("%PDF", Encoding.Latin1.GetString(File.ReadAllBytes(to)), StringComparison.Ordinal);
        var words = Tool.File("polski.txt", "language = Polski\ncode = pl\nStill to do = Jeszcze do zrobienia\n");
        var (code, _, error) = Tool.Run("print", "owner-page", Zip, "--unit", "0501", "--out", to, "--language", words);
        Assert.Equal(0, code);
        Assert.Contains("polski: has no line for “Do not plug this unit in”; it stays English", error, StringComparison.Ordinal);
        var wrong = Tool.File("wrong.txt", "language = Polski\ncode = pl\nFor {0}. = Dla.\n");
        var refused = Tool.Run("print", "owner-page", Zip, "--unit", "0501", "--out", Out("x.pdf"), "--language", wrong);
        Assert.Equal(2, refused.Code);
        Assert.Contains("line 3: does not keep the marks", refused.Error, StringComparison.Ordinal);
        Assert.Equal(2, Tool.Run("print", "label", Zip, "--unit", "0501", "--out", Out("x.pdf"), "--language", "deutsch").Code);
    }

    [Fact]
    public void What_is_no_zip_is_refused()
    {
        var (code, _, error) = Tool.Run("print", "label", Tool.File("a.zip", "no zip"), "--unit", "0501", "--out", Out("x.pdf"));
        Assert.Equal(2, code);
        Assert.Contains("is no zip", error, StringComparison.Ordinal);
        Refusal.NoTrace(error);
    }
}
