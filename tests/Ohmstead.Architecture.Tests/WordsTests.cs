using System.Text.RegularExpressions;

namespace Ohmstead.Architecture.Tests;

/// <summary>docs/words.md: one word for one concept, and the words that no sentence of the program has in it.</summary>
public partial class WordsTests
{
    private const string Page = "docs/words.md";

    /// <summary>Sentences in which such a word is right, or that speak of a file: the file's name and a piece of the sentence.</summary>
    private static readonly (string File, string Words)[] Allowed =
    [
        // Words of the JSON that the table puts into those of the bench.
        ("AnswerTable.cs", "too few of this kind"),
        ("AnswerTable.cs", "usual, outside the kind's band"),
    ];

    /// <summary>What these say, they say of a file to whoever writes it, in the words of the file.</summary>
    private static readonly string[] SpeaksOfFiles =
    [
        "src/Ohmstead.Electrical/",
        "src/Ohmstead.Storage/Zips/",
        "src/Ohmstead.Storage/Migrations/",
    ];

    [GeneratedRegex("""(?<!@)\$?"((?:[^"\\\n]|\\.)*)"(?!")""")]
    private static partial Regex Literal();

    [GeneratedRegex("\"\"\"(.*?)\"\"\"", RegexOptions.Singleline)]
    private static partial Regex RawLiteral();

    [GeneratedRegex(@"@\*.*?\*@|@code\s*\{|<code>.*?</code>|<!--.*?-->", RegexOptions.Singleline)]
    private static partial Regex NotRead();

    [GeneratedRegex(@"\{[^{}]*\}|@[\w.]+(\([^()]*\))?|</?[A-Za-z][^<>]*>")]
    private static partial Regex Computed();

    [Fact]
    public void Every_concept_has_its_word_on_the_screen_and_in_the_code()
    {
        var rows = Repository
            .Read(Page)
            .Split('\n')
            .Where(l => l.StartsWith("| ", StringComparison.Ordinal))
            .Select(l => l.Trim('|').Split('|').Select(c => c.Trim()).ToArray())
            .ToList();
        Assert.True(rows.Count > 60, "the table of words is too short to be whole");
        Assert.All(rows, r => Assert.True(r.Length == 4 && r[0].Length > 0 && r[1].Length > 0, string.Join('|', r)));
        var code = string.Join('\n', Repository.Files("src", "*.cs").Concat(Repository.Files("src", "*.razor")).Select(Repository.Read));
        // What stands in backquotes is a name of the code, or the path of a folder.
        foreach (var name in rows.SelectMany(r => Regex.Matches(r[2], "`([^`]+)`").Select(m => m.Groups[1].Value)))
            Assert.True(name.Split('.', '/').All(n => code.Contains(n, StringComparison.Ordinal)), $"{name} is not in the code");
    }

    [Fact]
    public void Each_text_is_where_the_page_says()
    {
        var page = Repository.Read(Page);
        var list = page[
            page.IndexOf("## Where the texts are", StringComparison.Ordinal)..page.IndexOf("## Never", StringComparison.Ordinal)
        ];
        var files = Repository.Files("src", "*").ToList();
        var places = list.Split('\n').Where(l => l.StartsWith("- ", StringComparison.Ordinal)).ToList();
        Assert.True(places.Count > 8, "the list of places is too short to be whole");
        foreach (var place in places)
        {
            var path = Regex.Match(place, "`(src/[^`]+)`").Groups[1].Value;
            Assert.Contains(files, f => f.StartsWith(path, StringComparison.Ordinal));
            foreach (var type in Regex.Matches(place, "`([A-Z]\\w+)`").Select(m => m.Groups[1].Value))
                Assert.Contains(path + type + ".cs", files);
        }
    }

    [Fact]
    public void No_sentence_of_the_program_has_a_word_in_it_that_is_never_used()
    {
        var never = NeverUsed();
        Assert.True(never.Count >= 20);
        var found = new List<string>();
        foreach (
            var file in Repository
                .Files("src", "*.cs")
                .Concat(Repository.Files("src", "*.razor"))
                .Where(f => !SpeaksOfFiles.Any(s => f.StartsWith(s, StringComparison.Ordinal)))
        )
        foreach (var sentence in Sentences(file, Repository.Read(file)))
            if (!Allowed.Any(a => file.EndsWith(a.File, StringComparison.Ordinal) && sentence.Contains(a.Words, StringComparison.Ordinal)))
                found.AddRange(never.Where(n => n.IsMatch(sentence)).Select(n => $"{file}: {n}: {sentence.Trim()}"));
        Assert.True(
            found.Count == 0,
            $"{found.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)}\n" + string.Join('\n', found)
        );
    }

    [Theory]
    [InlineData("a.cs", "var x = \"The check stands now\";", "The check stands now")]
    [InlineData("a.cs", "var x = $\"{a} is the iron of {b}\";", "is the iron of")]
    [InlineData("a.razor", "<p class=\"soft\">A gate is <b>shut</b></p>", "A gate is")]
    public void The_scan_sees_what_a_person_reads(string file, string text, string sentence) =>
        Assert.Contains(Sentences(file, text), s => s.Contains(sentence, StringComparison.Ordinal));

    [Fact]
    public void The_scan_does_not_see_a_comment_nor_a_word_of_the_files() =>
        Assert.Empty(Sentences("a.cs", "/// The gate \"x y\" in a comment\nvar y = \"kind\";"));

    private static List<Regex> NeverUsed()
    {
        var page = Repository.Read(Page);
        return
        [
            .. page[page.IndexOf("## Never", StringComparison.Ordinal)..]
                .Split('\n')
                .Where(l => l.StartsWith("- ", StringComparison.Ordinal))
                .SelectMany(l => l[2..].Split('·'))
                .Select(w => new Regex($@"(?<![\w.(])(?:{Regex.Escape(w.Trim())})(?![\w(]|\.\w| [>=])", RegexOptions.IgnoreCase)),
        ];
    }

    /// <summary>The texts of a file that have a space in them: string literals, and in a page the words between its tags.</summary>
    private static IEnumerable<string> Sentences(string file, string text)
    {
        if (file.EndsWith(".razor", StringComparison.Ordinal))
        {
            var code = text.IndexOf("@code", StringComparison.Ordinal);
            var page = NotRead().Replace(code < 0 ? text : text[..code], " ");
            foreach (var line in page.Split('\n').Where(l => !l.TrimStart().StartsWith('@')))
                yield return Computed().Replace(line, " ");
            text = page + "\n" + (code < 0 ? "" : text[code..]);
        }
        var lines = text.Split('\n').Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal));
        var whole = string.Join('\n', lines);
        foreach (Match m in RawLiteral().Matches(whole))
            if (m.Groups[1].Value.Contains(' '))
                yield return m.Groups[1].Value;
        foreach (Match m in Literal().Matches(RawLiteral().Replace(whole, " ")))
            if (m.Groups[1].Value.Trim().Contains(' '))
                yield return Computed().Replace(m.Groups[1].Value, " ");
    }
}
