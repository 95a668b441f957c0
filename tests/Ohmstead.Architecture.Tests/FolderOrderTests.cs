using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using static ArchUnitNET.Fluent.ArchRuleDefinition;
using Assembly = System.Reflection.Assembly;

namespace Ohmstead.Architecture.Tests;

/// <summary>The folders of Electrical, those of its diagnosis and those of Workshop lean on those before them, never on those after.</summary>
public class FolderOrderTests
{
    private const string Root = "Ohmstead.Electrical";
    private const string Engine = Root + ".Diagnosis";
    private const string Trade = "Ohmstead.Workshop";

    // Folders in one row are side by side and do not know each other.
    private static readonly FolderOrder Order = new(
        Root,
        [
            ["TypeSheets"],
            ["Outlines"],
            ["Circuits"],
            ["Solving"],
            ["Faults"],
            ["Readings"],
            ["Diagnosis", "Fitting", "Carrying"],
            ["Planning", "Drafting"],
            ["Reckoning"],
        ]
    );

    // From how likely a reading is to what should be read next.
    private static readonly FolderOrder EngineOrder = new(
        Engine,
        [
            ["Likelihoods"],
            ["Hypotheses"],
            ["Observed"],
            ["Sizes"],
            ["Searching"],
            ["Answers"],
            ["Doubts", "Ranking"],
        ]
    );

    // What is said and owned, what happened, what is known of one unit stage by stage, the job as a whole, what leaves the program.
    private static readonly FolderOrder TradeOrder = new(
        Trade,
        [
            ["Words"],
            ["Shops", "Cautions", "Listening"],
            ["Drawing"],
            ["Journal"],
            ["Units"],
            ["TakeApart", "Drawers"],
            ["LookOver", "Wiring"],
            ["Untyped"],
            ["Readings"],
            ["Findings"],
            ["Plans"],
            ["Repair", "Proving"],
            ["Testing"],
            ["Kinds"],
            ["Dating"],
            ["Asking"],
            ["Job"],
            ["Merging"],
            ["Days", "LookingBack"],
            ["Papers", "Stores"],
        ]
    );

    private static readonly ArchUnitNET.Domain.Architecture Built = new ArchLoader()
        .LoadAssemblies(Repository.Electrical, Repository.Workshop, Repository.Storage, Repository.App)
        .Build();

    public static TheoryData<string, string> Forbidden() => [.. Order.Forbidden(), .. EngineOrder.Forbidden(), .. TradeOrder.Forbidden()];

    [Theory]
    [MemberData(nameof(Forbidden))]
    public void A_folder_does_not_depend_on_a_later_one(string folder, string later) => FolderOrder.Check(Built, folder, later);

    [Fact]
    public void Of_what_the_diagnosis_shows_the_world_the_diagnoser_alone_knows_its_engine() =>
        Types()
            .That()
            .ResideInNamespace(Engine)
            .And()
            .DoNotHaveFullNameContaining(".Diagnoser")
            .Should()
            .NotDependOnAny(Types().That().ResideInNamespaceMatching($@"^{Engine}\."))
            .Check(Built);

    [Fact]
    public void No_part_of_the_engine_knows_the_diagnoser() =>
        Types()
            .That()
            .ResideInNamespaceMatching($@"^{Engine}\.")
            .Should()
            .NotDependOnAny(typeof(Electrical.Diagnosis.Diagnoser))
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
    private static readonly Assembly[] Projects = [Repository.Electrical, Repository.Workshop, Repository.Storage, Repository.App];

    public static TheoryData<int, int> LaterProjects() =>
        [.. from project in Enumerable.Range(0, 4) from later in Enumerable.Range(project + 1, 3 - project) select (project, later)];

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
                    || name.Contains("Npgsql", StringComparison.Ordinal)
                    || name.Contains("Sqlite", StringComparison.OrdinalIgnoreCase)
                )
            select $"{project.GetName().Name} uses {used.Name}";
        Findings.None(found);
    }

    [Fact]
    public void Every_folder_has_a_place_in_the_order()
    {
        IEnumerable<string> used =
            from type in Repository.Electrical.GetTypes()
            where type.Namespace is { } name && name.StartsWith(Root + ".", StringComparison.Ordinal) && name != Engine
            select type.Namespace;
        Findings.None(used.Distinct().Where(name => !EngineOrder.IsPlaced(name) && !Order.IsPlaced(name)));
        Findings.None(used.Where(name => name.StartsWith(Engine + ".", StringComparison.Ordinal) && !EngineOrder.IsPlaced(name)));
        IEnumerable<string> trade =
            from type in Repository.Workshop.GetTypes()
            where type.Namespace is { } name && (name == Trade || name.StartsWith(Trade + ".", StringComparison.Ordinal))
            select type.Namespace;
        Findings.None(trade.Distinct().Where(name => !TradeOrder.IsPlaced(name)));
    }
}
