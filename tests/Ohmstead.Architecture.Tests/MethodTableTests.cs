using System.Text.RegularExpressions;

namespace Ohmstead.Architecture.Tests;

/// <summary>docs/methods/diagnosis.md, "Step by step": whoever follows it has the files of the engine, all of them, and no other.</summary>
public class MethodTableTests
{
    private const string Engine = "src/Ohmstead.Electrical/Diagnosis/";

    private static string[] Named()
    {
        var page = Repository.Read("docs/methods/diagnosis.md");
        var table = page[page.IndexOf("## Step by step", StringComparison.Ordinal)..];
        var rows = table.Split('\n').Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Skip(1);
        string[] named = [.. rows.SelectMany(row => Regex.Matches(row.Split('|')[2], "`([^`]+)`").Select(match => match.Groups[1].Value))];
        Assert.True(named.Length > 30, $"The table names {named.Length} types only.");
        return named;
    }

    private static string[] Files() =>
        [.. Repository.Files(Engine.TrimEnd('/'), "*.cs").Select(file => file[Engine.Length..^3]).Where(file => file.Contains('/'))];

    [Fact]
    public void Each_type_of_the_table_is_a_file_of_the_engine() => Findings.None(Named().Except(Files()));

    [Fact]
    public void Each_file_of_the_engine_has_its_step() => Findings.None(Files().Except(Named()));

    [Fact]
    public void No_type_is_named_for_two_steps() =>
        Findings.None(Named().GroupBy(name => name).Where(same => same.Count() > 1).Select(same => same.Key));
}
