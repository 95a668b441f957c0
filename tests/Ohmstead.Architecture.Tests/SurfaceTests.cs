using Assembly = System.Reflection.Assembly;

namespace Ohmstead.Architecture.Tests;

/// <summary>
/// docs/surface: what each project shows the others, as it was last looked at. What appears or goes is told; <c>./test surface</c>
/// writes the files anew, and the difference is reviewed with the change.
/// </summary>
public class SurfaceTests
{
    private static readonly Dictionary<string, Assembly> Projects = new()
    {
        ["Ohmstead.Electrical"] = Repository.Electrical,
        ["Ohmstead.Workshop"] = Repository.Workshop,
        ["Ohmstead.Storage"] = Repository.Storage,
        ["Ohmstead.App"] = Repository.App,
    };

    public static TheoryData<string> Names() => [.. Projects.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_project_shows_what_its_file_says_and_no_more(string project)
    {
        string[] now = Surface.Lines(Projects[project]);
        Assert.Contains(now, line => line.EndsWith(" : sealed record class", StringComparison.Ordinal));
        string file = Path.Combine(Repository.Root, "docs", "surface", project + ".txt");
        if (Remake.IsAsked)
        {
            File.WriteAllLines(file, now);
        }
        string[] kept = File.ReadAllLines(file);
        Findings.None([
            .. now.Except(kept).Select(line => $"+ {line}"),
            .. kept.Except(now).Select(line => $"- {line}"),
            .. Told(now, kept),
        ]);
    }

    private static IEnumerable<string> Told(string[] now, string[] kept) =>
        now.SequenceEqual(kept) ? [] : ["Where that is meant: ./test surface, and look at the difference."];
}
