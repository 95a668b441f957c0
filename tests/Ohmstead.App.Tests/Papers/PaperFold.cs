using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Ohmstead.Workshop.Papers;

namespace Ohmstead.App.Tests.Papers;

/// <summary>What a paper says of its unit, taken from its blocks: what is done, what is still to do, what was read, what may be run.</summary>
/// <param name="Done">Parts that are said to be replaced, made good, resoldered, added or removed.</param>
/// <param name="ToDo">Parts that are said to wait for it.</param>
/// <param name="Read">By title, what a reading is said to have shown last.</param>
/// <param name="Forbids">It says that the unit is not to be plugged in.</param>
/// <param name="Promises">It says what the unit can run, or that it is back.</param>
/// <param name="Amps">Every amount of amps that it promises.</param>
internal sealed record PaperFold(
    ImmutableHashSet<string> Done,
    ImmutableHashSet<string> ToDo,
    ImmutableDictionary<string, string> Read,
    bool Forbids,
    bool Promises,
    ImmutableArray<double> Amps
)
{
    private static readonly Regex IsDone = new(@"^(?<part>[^:(]+?)(, [^:]*|\s*\([^:]*\))?: (replaced|renewed|made good|resoldered|soldered|added|removed|taken out|put in)\b");
    private static readonly Regex IsToDo = new(@"^(?<part>[^:(]+?)(, [^:]*|\s*\([^:]*\))?: to be (replaced|renewed)\b");

    public static PaperFold Of(Paper paper)
    {
        var (done, toDo) = (ImmutableHashSet.CreateBuilder<string>(), ImmutableHashSet.CreateBuilder<string>());
        var read = ImmutableDictionary.CreateBuilder<string, string>();
        var amps = ImmutableArray.CreateBuilder<double>();
        var (heading, forbids, promises) = ("", false, false);
        foreach (var block in Flat(paper.Blocks))
        {
            forbids |= block is Notice { Weight: Weight.Stop } n && n.Title.Contains("PLUG", StringComparison.OrdinalIgnoreCase);
            forbids |= block is Masthead m && m.Title.Contains("not plug", StringComparison.OrdinalIgnoreCase);
            promises |= block is Masthead { Title: "Your unit is back" };
            if (block is Heading h)
                heading = h.Text;
            promises |= heading.StartsWith("What it can run", StringComparison.Ordinal) || block.Words.Any(w => w.Contains("W for hours", StringComparison.Ordinal));
            foreach (var line in block is Points or Prose or Notice ? block.Words : [])
            {
                if (IsDone.Match(line) is { Success: true } d)
                    done.Add(d.Groups["part"].Value);
                if (IsToDo.Match(line) is { Success: true } t)
                    toDo.Add(t.Groups["part"].Value);
            }
            if (block is not Table table)
                continue;
            if (heading.StartsWith("What it can run", StringComparison.Ordinal))
            {
                amps.AddRange(table.Rows.SelectMany(r => r.Cells).Select(c => Regex.Match(c, @"^([0-9.]+) A$")).Where(a => a.Success).Select(a => double.Parse(a.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)));
            }
            foreach (var row in table.Rows)
            {
                if (table.Columns is [{ Title: "Part" }, ..] && row.Cells[^1].StartsWith("replaced", StringComparison.Ordinal))
                    done.Add(row.Cells[0]);
                if (table.Columns is [{ Title: "Part" }, ..] && row.Cells[^1].StartsWith("to be replaced", StringComparison.Ordinal))
                    toDo.Add(row.Cells[0]);
                if (table.Columns is [{ Title: "Reading" }, .., { Title: "Verdict" }] && !heading.StartsWith("Read before", StringComparison.Ordinal))
                    read[row.Cells[0]] = row.Cells[2];
                if (heading == "What was tested")
                    read[row.Cells[0]] = row.Cells[1];
            }
        }
        return new(done.ToImmutable(), toDo.ToImmutable(), read.ToImmutable(), forbids, promises, amps.ToImmutable());
    }

    public static IEnumerable<Block> Flat(IEnumerable<Block> blocks) =>
        blocks.SelectMany(b => b is Sides s ? Flat(s.Left).Concat(Flat(s.Right)) : [b]);
}
