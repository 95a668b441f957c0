using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Ohmstead.Architecture.Tests;

/// <summary>Rules about the files themselves.</summary>
public partial class SourceTreeTests
{
    [Fact]
    public void Exactly_one_project_in_src_is_an_executable()
    {
        string project = Assert.Single(Repository.Files("src", "*.csproj"), IsExecutable);
        Assert.Equal("src/Ohmstead.App/Ohmstead.App.csproj", project);
    }

    [Fact]
    public void Electrical_needs_no_package_and_no_other_project()
    {
        var project = XDocument.Parse(Repository.Read("src/Ohmstead.Electrical/Ohmstead.Electrical.csproj"));
        Assert.Empty(project.Descendants("PackageReference"));
        Assert.Empty(project.Descendants("ProjectReference"));
    }

    [Fact]
    public void A_namespace_is_its_folder()
    {
        (string File, string Expected, string Actual)[] found =
        [
            .. from file in Repository.Files("src", "*.cs")
            from Match match in NamespaceLine().Matches(Repository.Read(file))
            select (file, string.Join('.', file.Split('/')[1..^1]), match.Groups[1].Value),
        ];
        Assert.True(found.Length > 500, $"Only {found.Length} namespaces were looked at.");
        Findings.None(found.Where(f => f.Actual != f.Expected).Select(f => $"{f.File}: namespace {f.Actual}, expected {f.Expected}"));
    }

    [Fact]
    public void What_spoils_a_bench_knows_nothing_of_the_diagnosis_that_it_judges()
    {
        const string experiments = "perf/Ohmstead.Perf/Experiments";
        string[] drawer = [.. Repository.Files($"{experiments}/Benches", "*.cs"), $"{experiments}/DrawnUnit.cs"];
        Assert.True(drawer.Length > 3, "What spoils a bench is elsewhere now.");
        IEnumerable<string> found =
            from file in drawer
            where Repository.Read(file).Contains("Electrical.Diagnosis", StringComparison.Ordinal)
            select file;
        Findings.None(found);
    }

    [Fact]
    public void Nothing_reaches_outside_the_repository()
    {
        string[] scripts = ["ohmstead", "test", ".ci/run"];
        string[] sources = [.. scripts, .. Repository.Files("src", "*"), .. Repository.Files("tests", "*.cs")];
        IEnumerable<string> found = from file in sources where OutsidePath().IsMatch(Repository.Read(file)) select file;
        Findings.None(found);
    }

    private static bool IsExecutable(string project)
    {
        XElement root = XDocument.Parse(Repository.Read(project)).Root!;
        string sdk = root.Attribute("Sdk")?.Value ?? "";
        return sdk.EndsWith(".Web", StringComparison.Ordinal)
            || root.Descendants("OutputType").Any(type => type.Value is "Exe" or "WinExe");
    }

    [GeneratedRegex(@"^namespace\s+([\w.]+)", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();

    // A folder "shared" beside the repository exists only where it is developed. (The brackets keep this line from
    // finding itself.)
    [GeneratedRegex(@"(^|[\s""'`(=:/])[s]hared/|/[w]ork/", RegexOptions.Multiline)]
    private static partial Regex OutsidePath();
}
