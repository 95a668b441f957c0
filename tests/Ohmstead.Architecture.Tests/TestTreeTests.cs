using System.Text.RegularExpressions;

namespace Ohmstead.Architecture.Tests;

/// <summary>Whoever knows where the code is knows where its tests are.</summary>
public partial class TestTreeTests
{
    // The journeys walk through every folder, and this project looks at all of them.
    private static readonly string[] Mirrored = ["Electrical", "Workshop", "Storage", "App"];

    [Fact]
    public void A_folder_of_tests_is_a_folder_of_the_code_that_they_test()
    {
        string[] folders = [.. Files().Select(file => Path.GetDirectoryName(file)!.Replace('\\', '/')).Distinct()];
        Assert.True(folders.Length > 40, $"Only {folders.Length} folders of tests were looked at.");
        Findings.None(folders.Where(folder => !Subjects(folder).Any(Directory.Exists)));
    }

    [Fact]
    public void A_namespace_of_tests_is_its_folder()
    {
        (string File, string Expected, string Actual)[] found =
        [
            .. from file in Files()
            let named = NamespaceLine().Match(Repository.Read(file))
            where named.Success
            select (file, string.Join('.', file.Split('/')[1..^1]), named.Groups[1].Value),
        ];
        Assert.True(found.Length > 200, $"Only {found.Length} files of tests were looked at.");
        Findings.None(found.Where(f => f.Actual != f.Expected).Select(f => $"{f.File}: namespace {f.Actual}, expected {f.Expected}"));
    }

    private static IEnumerable<string> Files() => Mirrored.SelectMany(name => Repository.Files($"tests/Ohmstead.{name}.Tests", "*.cs"));

    // What the core's tests say of the experiments is about those in perf/.
    private static IEnumerable<string> Subjects(string folder)
    {
        string[] parts = folder.Split('/');
        string project = parts[1][..^".Tests".Length];
        yield return Path.Combine([Repository.Root, "src", project, .. parts[2..]]);
        yield return Path.Combine([Repository.Root, "perf", "Ohmstead.Perf", .. parts[2..]]);
    }

    [GeneratedRegex(@"^namespace\s+([\w.]+)", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();
}
