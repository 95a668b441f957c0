using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Papers;

namespace Ohmstead.App.Tests.Papers;

/// <summary>What a paper says of its unit, taken from its blocks, in one form for all papers.</summary>
/// <param name="Done">Parts that are said to be replaced, made good, resoldered, added or removed.</param>
/// <param name="ToDo">Parts that are said to wait for it.</param>
/// <param name="Read">By title, what a reading is said to have shown last.</param>
/// <param name="Ends">By title, what is said of it: "pass", "failed", "too close", "normal", "off".</param>
/// <param name="Signed">By what was not measured or not looked at, who signed for it.</param>
/// <param name="Runs">By pair of posts, the amps that are promised.</param>
/// <param name="Watts">What all posts together are promised.</param>
/// <param name="Tested">The day of the last reading.</param>
/// <param name="Forbids">It says that the unit is not to be plugged in.</param>
/// <param name="Promises">It says what the unit can run, or that it is back.</param>
internal sealed record PaperFold(
    ImmutableHashSet<string> Done,
    ImmutableHashSet<string> ToDo,
    ImmutableDictionary<string, string> Read,
    ImmutableDictionary<string, string> Ends,
    ImmutableDictionary<string, string> Signed,
    ImmutableDictionary<string, string> Runs,
    ImmutableHashSet<string> Watts,
    ImmutableHashSet<string> Tested,
    bool Forbids,
    bool Promises
)
{
    private const string Day = @"\d{1,2} [A-Z][a-z]{2} \d{4}";
    private static readonly Regex IsDone = new(
        @"^(?<part>[^:(]+?)(, [^:]*|\s*\([^:]*\))?: (replaced|renewed|made good|resoldered|soldered|added|removed|taken out|put in)\b"
    );
    private static readonly Regex IsToDo = new(@"^(?<part>[^:(]+?)(, [^:]*|\s*\([^:]*\))?: to be (replaced|renewed)\b");

    public static PaperFold Of(Paper paper)
    {
        var (done, toDo) = (ImmutableHashSet.CreateBuilder<string>(), ImmutableHashSet.CreateBuilder<string>());
        var (read, ends, signed, runs) = (Map(), Map(), Map(), Map());
        var (watts, tested) = (ImmutableHashSet.CreateBuilder<string>(), ImmutableHashSet.CreateBuilder<string>());
        var (heading, forbids, promises) = ("", false, false);
        foreach (var block in Flat(paper.Blocks))
        {
            forbids |= block is Notice { Weight: Weight.Stop } n && n.Title.Contains("PLUG", StringComparison.OrdinalIgnoreCase);
            forbids |= block is Masthead m && m.Title.Contains("not plug", StringComparison.OrdinalIgnoreCase);
            promises |= block is Masthead { Title: "Your unit is back" };
            if (block is Heading h)
                heading = h.Text;
            promises |=
                heading.StartsWith("What it can run", StringComparison.Ordinal)
                || block.Words.Any(w => w.Contains("W for hours", StringComparison.Ordinal));
            if (block is Heading or Prose)
                Add(tested, block, $@"(?:last on|^Read|\. Read(?: {Day} to)?) (?<it>{Day})\.?( |$)");
            foreach (
                var line in block is Points or Prose or Notice
                    ? block.Words.SelectMany(w => Regex.Split(w, "(?=Not measured: )|(?=Heat over)"))
                    : []
            )
            {
                if (IsDone.Match(line) is { Success: true } d)
                    done.Add(d.Groups["part"].Value);
                if (IsToDo.Match(line) is { Success: true } t)
                    toDo.Add(t.Groups["part"].Value);
                if (Regex.Match(line, @"All posts together: (?<it>\d+) W") is { Success: true } w)
                    watts.Add(w.Groups["it"].Value);
                if (Regex.Match(line, @"^(?<posts>.+ – .+): (?<it>[\d.]+ A), limited by") is { Success: true } run)
                    runs[run.Groups["posts"].Value] = run.Groups["it"].Value;
                Sign(signed, line);
                if (line.StartsWith("Not normal: ", StringComparison.Ordinal))
                    foreach (
                        var one in line["Not normal: ".Length..]
                            .TrimEnd('.', ' ')
                            .Split("; ")
                            .Where(o => o.Contains(": ", StringComparison.Ordinal))
                    )
                        ends[one[..one.LastIndexOf(": ", StringComparison.Ordinal)]] = End(
                            one[(one.LastIndexOf(": ", StringComparison.Ordinal) + 2)..]
                        );
            }
            if (block is not Table table)
                continue;
            foreach (var row in table.Rows)
            {
                if (table.Columns is [{ Title: "Part" }, ..] && row.Cells[^1].StartsWith("replaced", StringComparison.Ordinal))
                    done.Add(row.Cells[0]);
                if (table.Columns is [{ Title: "Part" }, ..] && row.Cells[^1].StartsWith("to be replaced", StringComparison.Ordinal))
                    toDo.Add(row.Cells[0]);
                if (
                    table.Columns is [{ Title: "Reading" }, .., { Title: "Verdict" }]
                    && !heading.StartsWith("Read before", StringComparison.Ordinal)
                )
                    (read[row.Cells[0]], ends[row.Cells[0]]) = (row.Cells[2], End(row.Cells[3]));
                if (heading.StartsWith("What was tested", StringComparison.Ordinal))
                    (read[row.Cells[0]], ends[row.Cells[0]]) = (row.Cells[1], End(row.Cells[2]));
                if (heading.StartsWith("What it can run", StringComparison.Ordinal))
                    runs[row.Cells[0]] = row.Cells.First(c => Regex.IsMatch(c, @"^[\d.]+ A$"));
            }
        }
        promises |= runs.Count > 0;
        return new(
            done.ToImmutable(),
            toDo.ToImmutable(),
            read.ToImmutable(),
            ends.ToImmutable(),
            signed.ToImmutable(),
            runs.ToImmutable(),
            watts.ToImmutable(),
            tested.ToImmutable(),
            forbids,
            promises
        );
    }

    /// <summary>The same of a label: its words and the text in its code.</summary>
    public static PaperFold Of(Label label)
    {
        var (read, signed, tested) = (Map(), Map(), ImmutableHashSet.CreateBuilder<string>());
        foreach (var line in label.Code.Split('\n').Skip(2))
        {
            Sign(signed, line);
            if (line.LastIndexOf(": ", StringComparison.Ordinal) is > 0 and var at && !line.Contains("waived by", StringComparison.Ordinal))
                read[line[..at]] = line[(at + 2)..];
        }
        if (label.MayBePluggedIn)
            tested.Add(label.Day);
        return new(
            [],
            [],
            read.ToImmutable(),
            ImmutableDictionary<string, string>.Empty,
            signed.ToImmutable(),
            ImmutableDictionary<string, string>.Empty,
            [],
            tested.ToImmutable(),
            !label.MayBePluggedIn,
            label.MayBePluggedIn
        );
    }

    public static IEnumerable<Block> Flat(IEnumerable<Block> blocks) =>
        blocks.SelectMany(b => b is Sides s ? Flat(s.Left).Concat(Flat(s.Right)) : [b]);

    private static ImmutableDictionary<string, string>.Builder Map() =>
        ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);

    private static void Add(ImmutableHashSet<string>.Builder to, Block block, string pattern)
    {
        foreach (var line in block.Words)
        foreach (var match in Regex.Matches(line, pattern).Cast<Match>())
            to.Add(match.Groups["it"].Value);
    }

    /// <summary>"X: why. Waived by N.", "X, waived by N", "X: waived by N", "X: not looked at, signed by N: why."</summary>
    private static void Sign(ImmutableDictionary<string, string>.Builder signed, string line)
    {
        foreach (var one in line.Replace("Not measured: ", "", StringComparison.Ordinal).TrimEnd('.', ' ').Split("; "))
            if (
                Regex.Match(
                    one,
                    @"^(?:(?<it>[^:]+): .*\. Waived by|(?<it>.+)[:,] waived by|(?<it>[^:,]+)[:,] not looked at, signed by) (?<by>(?:[A-Z]\. )?[A-Z][\w.]*)"
                ) is
                { Success: true } m
            )
                signed[m.Groups["it"].Value] = m.Groups["by"].Value.TrimEnd('.');
    }

    private static string End(string verdict) =>
        verdict.StartsWith("pass", StringComparison.Ordinal) ? "pass"
        : verdict.StartsWith("failed", StringComparison.Ordinal) ? "failed"
        : verdict.StartsWith("too close", StringComparison.Ordinal) ? "too close"
        : verdict.StartsWith("normal", StringComparison.Ordinal) ? "normal"
        : "off";
}
