using System.Text.RegularExpressions;

namespace Ohmstead.Architecture.Tests;

/// <summary>
/// CONTRIBUTING.md, "A new kind of element": what the program knows of a kind is gathered, so that the next one is in few files, and the
/// recipe names them. The capacitor is the kind to copy: it has an equation of its own, and nothing else sets it apart.
/// </summary>
public partial class NewKindTests
{
    private const int MostFiles = 9;

    /// <summary>Comments, and sentences for people: a touch current is explained by a capacitor on any sheet.</summary>
    [GeneratedRegex("//.*|\"[^\"\n]* [^\"\n]*\"")]
    private static partial Regex Prose();

    private static string[] Naming() =>
        [
            .. Repository
                .Files("src", "*.*")
                .Where(file =>
                    file.EndsWith(".cs", StringComparison.Ordinal)
                    || file.EndsWith(".razor", StringComparison.Ordinal)
                    || file.EndsWith(".json", StringComparison.Ordinal)
                )
                .Where(file => Regex.IsMatch(Prose().Replace(Repository.Read(file), ""), "\\b(Capacitor|capacitor)\\b")),
        ];

    [Fact]
    public void A_kind_with_an_equation_of_its_own_is_named_in_few_files() =>
        Assert.True(Naming() is { Length: > 0 and <= MostFiles }, string.Join('\n', Naming()));

    [Fact]
    public void The_recipe_names_each_of_them()
    {
        var page = Repository.Read("CONTRIBUTING.md");
        var from = page.IndexOf("**A new kind of element.**", StringComparison.Ordinal);
        var recipe = page[from..page.IndexOf("**A new screen.**", StringComparison.Ordinal)];
        // The record has a file of its own, which the recipe names by its folder.
        Findings.None(
            Naming()
                .Select(file => file[(file.LastIndexOf('/') + 1)..])
                .Where(name => name != "Capacitor.cs" && !recipe.Contains($"{name}`", StringComparison.Ordinal))
        );
    }
}
