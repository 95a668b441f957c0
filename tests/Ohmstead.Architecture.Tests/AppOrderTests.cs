using System.Text.RegularExpressions;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace Ohmstead.Architecture.Tests;

/// <summary>The folders of the program: screens lean on the web host, and never the other way. Pages are types like all others.</summary>
public class AppOrderTests
{
    private const string Root = "Ohmstead.App";
    private const string Screens = Root + ".Screens";

    // Folders in one row are side by side and do not know each other.
    private static readonly string[][] Rows =
    [
        ["Web"],
        ["Background"],
        ["Papers", "Demo"],
        ["Components"],
        ["Phones"],
        ["Screens"],
        ["Hosting"],
        ["Commands"],
    ];

    // A screen may lean on what those of the readings have for all, and on a panel of another stage; no two on each other.
    private static readonly string[][] ScreenRows =
    [
        ["Start", "Shop", "Types", "About", "Apart", "Wiring", "Papers", "Readings"],
        ["Findings", "Drawing", "Proving", "Untyped"],
        ["Units"],
    ];

    private static readonly ArchUnitNET.Domain.Architecture Built = new ArchLoader().LoadAssemblies(Repository.App).Build();

    public static TheoryData<string, string> Forbidden() => [.. Later(Root, Rows), .. Later(Screens, ScreenRows)];

    private static IEnumerable<(string, string)> Later(string parent, string[][] rows) =>
        from row in Enumerable.Range(0, rows.Length)
        from folder in rows[row]
        from other in rows[row..].SelectMany(r => r)
        where other != folder
        select ($"{parent}.{folder}", $"{parent}.{other}");

    [Theory]
    [MemberData(nameof(Forbidden))]
    public void A_folder_does_not_depend_on_a_later_one(string folder, string later) =>
        Types()
            .That()
            .ResideInNamespaceMatching(In(folder))
            .Should()
            .NotDependOnAny(Types().That().ResideInNamespaceMatching(In(later)))
            .Check(Built);

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
        Findings.None(used.Where(name => !IsPlaced(name, Root, Rows)));
        Findings.None(used.Where(name => name.StartsWith(Screens + ".", StringComparison.Ordinal) && !IsPlaced(name, Screens, ScreenRows)));
    }

    // Only the build knows that a tag in markup is a type: were pages not seen, the order above would hold of nothing.
    [Fact]
    public void What_a_page_shows_counts_as_known_to_it() =>
        Assert.Contains(
            Built.Types.Single(t => t.FullName == $"{Root}.Hosting.Layout").Dependencies,
            d => d.Target.FullName == $"{Root}.Components.MishapNotice"
        );

    private static bool IsPlaced(string name, string parent, string[][] rows) =>
        rows.SelectMany(row => row).Any(folder => Regex.IsMatch(name, In($"{parent}.{folder}")));

    private static string In(string folder) => $@"^{Regex.Escape(folder)}(\.|$)";
}
