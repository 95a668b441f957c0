using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using static ArchUnitNET.Fluent.ArchRuleDefinition;
using Assembly = System.Reflection.Assembly;

namespace Ohmstead.Architecture.Tests;

/// <summary>The folders of Electrical lean on those before them, never on those after.</summary>
public class FolderOrderTests
{
    private const string Root = "Ohmstead.Electrical";

    // Folders in one row stand side by side and do not know each other.
    private static readonly string[][] Rows =
    [
        ["TypeSheets"],
        ["Circuits"],
        ["Solving"],
        ["Faults"],
        ["Readings"],
        ["Diagnosis", "Fitting", "Carrying"],
        ["Planning"],
    ];

    private static readonly ArchUnitNET.Domain.Architecture Built = new ArchLoader()
        .LoadAssemblies(Repository.Electrical, Repository.Workshop, Repository.Storage, Repository.App)
        .Build();

    public static TheoryData<string, string> Forbidden()
    {
        var pairs = new TheoryData<string, string>();
        for (int row = 0; row < Rows.Length; row++)
        {
            foreach (string folder in Rows[row])
            {
                foreach (string other in Rows[row..].SelectMany(r => r).Where(other => other != folder))
                {
                    pairs.Add(folder, other);
                }
            }
        }
        return pairs;
    }

    [Theory]
    [MemberData(nameof(Forbidden))]
    public void A_folder_does_not_depend_on_a_later_one(string folder, string later) =>
        Types()
            .That()
            .ResideInNamespaceMatching(In(folder))
            .Should()
            .NotDependOnAny(Types().That().ResideInNamespaceMatching(In(later)))
            .WithoutRequiringPositiveResults()
            .Check(Built);

    [Fact]
    public void The_root_namespace_depends_on_no_folder() =>
        Types()
            .That()
            .ResideInNamespace(Root)
            .Should()
            .NotDependOnAny(Types().That().ResideInNamespaceMatching($@"^{Root}\."))
            .WithoutRequiringPositiveResults()
            .Check(Built);

    // Each project leans on those before it only.
    private static readonly Assembly[] Projects =
    [
        Repository.Electrical,
        Repository.Workshop,
        Repository.Storage,
        Repository.App,
    ];

    public static TheoryData<int, int> LaterProjects() =>
        [
            .. from project in Enumerable.Range(0, 4)
            from later in Enumerable.Range(project + 1, 3 - project)
            select (project, later),
        ];

    [Theory]
    [MemberData(nameof(LaterProjects))]
    public void A_project_does_not_depend_on_a_later_one(int project, int later) =>
        Types()
            .That()
            .ResideInAssembly(Projects[project])
            .Should()
            .NotDependOnAny(Types().That().ResideInAssembly(Projects[later]))
            .WithoutRequiringPositiveResults()
            .Check(Built);

    [Fact]
    public void The_database_is_known_to_storage_alone()
    {
        IEnumerable<string> found =
            from project in (Assembly[])[Repository.Electrical, Repository.Workshop, Repository.App]
            from used in project.GetReferencedAssemblies()
            where
                used.Name is { } name
                && (
                    name.Contains("EntityFramework", StringComparison.Ordinal)
                    || name.Contains("Sqlite", StringComparison.OrdinalIgnoreCase)
                )
            select $"{project.GetName().Name} uses {used.Name}";
        Findings.None(found);
    }

    [Fact]
    public void Every_folder_has_a_place_in_the_order()
    {
        string[] known = [.. Rows.SelectMany(row => row)];
        IEnumerable<string> used = Repository
            .Electrical.GetTypes()
            .Select(type => type.Namespace ?? "")
            .Where(name => name.StartsWith(Root + ".", StringComparison.Ordinal))
            .Select(name => name.Split('.')[2])
            .Distinct();
        Findings.None(used.Except(known));
    }

    private static string In(string folder) => $@"^{Root}\.{folder}(\.|$)";
}
