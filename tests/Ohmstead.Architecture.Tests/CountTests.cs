using System.Globalization;

namespace Ohmstead.Architecture.Tests;

/// <summary>
/// docs/surface/counts.txt: how much is longer or more crowded than it should be. Each number may fall and never rise: where one has
/// fallen, <c>./test surface</c> writes the lower one down.
/// </summary>
public class CountTests(ITestOutputHelper output)
{
    private static readonly string[] Projects = ["Electrical", "Workshop", "Storage", "App"];

    private static readonly string Kept = Path.Combine(Repository.Root, "docs", "surface", "counts.txt");

    [Fact]
    public void What_is_too_long_or_too_crowded_grows_fewer_and_never_more()
    {
        (string Name, IReadOnlyList<string> Places)[] now = [.. Projects.SelectMany(Of)];
        Dictionary<string, int> ceilings = File.ReadAllLines(Kept)
            .Select(line => line.Split(": "))
            .ToDictionary(parts => parts[0], parts => int.Parse(parts[1], CultureInfo.InvariantCulture));
        if (Remake.IsAsked)
        {
            ceilings = now.ToDictionary(
                count => count.Name,
                count => Math.Min(count.Places.Count, ceilings.GetValueOrDefault(count.Name, int.MaxValue))
            );
            File.WriteAllLines(
                Kept,
                ceilings.Select(ceiling => string.Create(CultureInfo.InvariantCulture, $"{ceiling.Key}: {ceiling.Value}"))
            );
        }
        Assert.Equal(ceilings.Keys.Order(StringComparer.Ordinal), now.Select(count => count.Name).Order(StringComparer.Ordinal));
        Findings.None(
            now.Where(count => count.Places.Count > ceilings[count.Name])
                .SelectMany(count => count.Places.Prepend(FormattableString.Invariant($"{count.Name}: more than {ceilings[count.Name]}")))
        );
        Findings.None(
            now.Where(count => count.Places.Count < ceilings[count.Name])
                .Select(count => FormattableString.Invariant($"{count.Name}: {count.Places.Count} now. Keep it: ./test surface"))
        );
    }

    private IEnumerable<(string Name, IReadOnlyList<string> Places)> Of(string project)
    {
        var counts = new Counts(Repository.Root, $"src/Ohmstead.{project}");
        output.WriteLine(
            FormattableString.Invariant(
                $"{project}: {counts.FileCount} files, {counts.CodeLines} lines of code, {counts.MethodCount} methods"
            )
        );
        Assert.True(counts.FileCount > 20 && counts.MethodCount > 50, project);
        yield return ($"{project}, files over {Counts.MostFileLines} lines", counts.LongFiles);
        yield return ($"{project}, methods over {Counts.MostMethodLines} lines", counts.LongMethods);
        yield return ($"{project}, methods with more than {Counts.MostParameters} parameters", counts.ManyParameters);
        yield return ($"{project}, pairs of folders that know each other", FolderPairs.Of(Repository.Project(project)));
    }
}
