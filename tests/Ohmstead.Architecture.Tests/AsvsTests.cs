using System.Globalization;
using System.Text.RegularExpressions;

namespace Ohmstead.Architecture.Tests;

/// <summary>docs/asvs.md: each item once, with one of three answers, and every test that is named there is in the tests.</summary>
public class AsvsTests
{
    private const string Page = "docs/asvs.md";
    private static readonly string[] Answers = ["holds", "does not apply", "does not hold"];

    private static string[][] Rows() =>
        [
            .. Repository
                .Read(Page)
                .Split('\n')
                .Where(line => Regex.IsMatch(line, "^\\| [0-9]"))
                .Select(line => line.Split('|', StringSplitOptions.TrimEntries)[1..^1]),
        ];

    [Fact]
    public void Each_item_stands_there_once_with_its_level_and_one_of_three_answers()
    {
        Assert.True(Rows().Length > 250, "Items are missing.");
        Findings.None(Rows().GroupBy(row => row[0]).Where(same => same.Count() > 1).Select(same => same.Key));
        Findings.None(
            Rows()
                .Where(row =>
                    row.Length != 5 || row[1] is not ("1" or "2") || !Answers.Contains(row[3]) || row[2].Length == 0 || row[4].Length == 0
                )
                .Select(row => string.Join(" | ", row))
        );
    }

    [Fact]
    public void The_counts_at_its_head_are_those_of_the_rows()
    {
        int[] counts = [Rows().Length, .. Answers.Select(answer => Rows().Count(row => row[3] == answer))];
        string said = string.Create(
            CultureInfo.InvariantCulture,
            $"{counts[0]} items: {counts[1]} hold, {counts[2]} do not apply, {counts[3]} do not hold."
        );
        Assert.Contains(said, Repository.Read(Page), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_test_that_is_named_there_is_in_the_tests()
    {
        Dictionary<string, string> classes = Repository
            .Files("tests", "*.cs")
            .SelectMany(file => Regex.Matches(Repository.Read(file), "class ([A-Za-z]+)").Select(found => (found.Groups[1].Value, file)))
            .GroupBy(found => found.Value, found => Repository.Read(found.file))
            .ToDictionary(files => files.Key, files => string.Join('\n', files));
        string[] named =
        [
            .. Regex
                .Matches(Repository.Read(Page), "`([A-Za-z]+(Tests|Contract))(\\.([A-Za-z0-9_]+))?`")
                .Select(found => found.Value.Trim('`')),
        ];
        Assert.True(named.Length > 80, $"Only {named.Length.ToString(CultureInfo.InvariantCulture)} tests are named.");
        Findings.None(
            named
                .Distinct()
                .Where(name =>
                    !classes.TryGetValue(name.Split('.')[0], out string? text)
                    || (name.Contains('.') && !text.Contains($" {name.Split('.')[1]}(", StringComparison.Ordinal))
                )
        );
    }
}
