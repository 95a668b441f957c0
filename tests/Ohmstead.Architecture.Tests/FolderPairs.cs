using ArchUnitNET.Loader;
using Assembly = System.Reflection.Assembly;

namespace Ohmstead.Architecture.Tests;

/// <summary>Folders of a project, two of which each lean on the other.</summary>
internal static class FolderPairs
{
    public static IReadOnlyList<string> Of(Assembly project)
    {
        var leanings = (
            from type in new ArchLoader().LoadAssembly(project).Build().Types
            let folder = Folder(type.FullName)
            from dependency in type.Dependencies
            let other = Folder(dependency.Target.FullName)
            where folder.Length > 0 && other.Length > 0 && folder != other && Root(type.FullName) == Root(dependency.Target.FullName)
            select (folder, other)
        ).ToHashSet();
        Assert.True(leanings.Count > 1, $"{project.GetName().Name}: no folder leans on another.");
        return
        [
            .. leanings
                .Where(pair => string.CompareOrdinal(pair.folder, pair.other) < 0 && leanings.Contains((pair.other, pair.folder)))
                .Select(pair => $"{pair.folder} and {pair.other}")
                .Order(StringComparer.Ordinal),
        ];
    }

    // Ohmstead.Workshop.Readings.Band is in Readings; a type of the root is in none.
    private static string Folder(string type) => type.Split('.') is ["Ohmstead", _, var folder, _, ..] ? folder : "";

    private static string Root(string type) => string.Join('.', type.Split('.').Take(2));
}
