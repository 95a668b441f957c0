using ArchUnitNET.Domain;
using ArchUnitNET.Loader;

namespace Ohmstead.Architecture.Tests;

/// <summary>The folders of the program: screens lean on the web host, and never the other way. Pages are types like all others.</summary>
public class AppOrderTests
{
    private const string Root = "Ohmstead.App";
    private const string Screens = Root + ".Screens";

    // Folders in one row are side by side and do not know each other.
    private static readonly FolderOrder Order = new(
        Root,
        [
            ["Queue"],
            ["Web"],
            ["Background"],
            ["Papers", "Demo"],
            ["Components"],
            ["Phones"],
            ["Screens"],
            ["Hosting"],
            ["Commands"],
        ]
    );

    // A screen may lean on what those of the readings have for all, and on a panel of another stage; no two on each other.
    private static readonly FolderOrder ScreenOrder = new(
        Screens,
        [
            ["Start", "Shop", "Types", "About", "Apart", "Wiring", "Papers", "Readings", "Owner"],
            ["Bins", "Days", "LookingBack", "Merging"],
            ["Findings", "Plans", "Drawing", "Proving", "Untyped", "Testing"],
            ["Units"],
        ]
    );

    private static readonly ArchUnitNET.Domain.Architecture Built = new ArchLoader().LoadAssemblies(Repository.App).Build();

    public static TheoryData<string, string> Forbidden() => [.. Order.Forbidden(), .. ScreenOrder.Forbidden()];

    [Theory]
    [MemberData(nameof(Forbidden))]
    public void A_folder_does_not_depend_on_a_later_one(string folder, string later) => FolderOrder.Check(Built, folder, later);

    [Fact]
    public void Every_folder_has_a_place_in_the_order()
    {
        string[] used =
        [
            .. Repository
                .App.GetTypes()
                .Select(t => t.Namespace)
                .OfType<string>()
                .Distinct()
                .Where(n => n.StartsWith(Root + ".", StringComparison.Ordinal)),
        ];
        Findings.None(used.Where(name => !Order.IsPlaced(name)));
        Findings.None(used.Where(name => name.StartsWith(Screens + ".", StringComparison.Ordinal) && !ScreenOrder.IsPlaced(name)));
    }

    /// <summary>Whatever works beside the screens is in the one queue, where it is counted and stopped; the invented workshop is filled before it opens.</summary>
    [Fact]
    public void Work_beside_the_screens_goes_through_the_queue()
    {
        string[] begin =
        [
            .. Built
                .Types.SelectMany(t => t.Dependencies)
                .OfType<ArchUnitNET.Domain.Dependencies.MethodCallDependency>()
                .Where(d => d.TargetMember.FullName.Contains("System.Threading.Tasks.Task::Run(", StringComparison.Ordinal))
                .Select(d => d.Origin.FullName.Split('+', '/')[0])
                .Distinct(),
        ];
        Assert.Contains($"{Root}.Queue.WorkQueue", begin);
        Findings.None(
            begin.Where(name =>
                !name.StartsWith($"{Root}.Queue.", StringComparison.Ordinal)
                && !name.StartsWith($"{Root}.Demo.", StringComparison.Ordinal)
                && name != $"{Root}.Commands.ServeCommand"
            )
        );
    }

    // Only the build knows that a tag in markup is a type: were pages not seen, the order above would hold of nothing.
    [Fact]
    public void What_a_page_shows_counts_as_known_to_it() =>
        Assert.Contains(
            Built.Types.Single(t => t.FullName == $"{Root}.Hosting.Layout").Dependencies,
            d => d.Target.FullName == $"{Root}.Components.MishapNotice"
        );
}
