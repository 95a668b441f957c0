using System.Text.RegularExpressions;
using ArchUnitNET.xUnitV3;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace Ohmstead.Architecture.Tests;

/// <summary>An order of folders: each leans on those in rows above it only; those in one row do not know each other.</summary>
/// <param name="parent">The namespace that they are in.</param>
internal sealed class FolderOrder(string parent, string[][] rows)
{
    /// <summary>Every folder with every one that it must not know.</summary>
    public IEnumerable<(string Folder, string Later)> Forbidden() =>
        from row in Enumerable.Range(0, rows.Length)
        from folder in rows[row]
        from other in rows[row..].SelectMany(r => r)
        where other != folder
        select ($"{parent}.{folder}", $"{parent}.{other}");

    /// <summary>True for a namespace that has a place in it, or lies in one that has.</summary>
    public bool IsPlaced(string name) => rows.SelectMany(row => row).Any(folder => Regex.IsMatch(name, In($"{parent}.{folder}")));

    /// <summary>Fails where a type of a folder knows one of another.</summary>
    public static void Check(ArchUnitNET.Domain.Architecture built, string folder, string later) =>
        Types()
            .That()
            .ResideInNamespaceMatching(In(folder))
            .Should()
            .NotDependOnAny(Types().That().ResideInNamespaceMatching(In(later)))
            .Check(built);

    private static string In(string folder) => $@"^{Regex.Escape(folder)}(\.|$)";
}
