using System.Reflection;

namespace Ohmstead.Architecture.Tests;

/// <summary>The folder this repository was checked out into, and the assemblies built from it.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static Assembly Electrical { get; } = Assembly.Load("Ohmstead.Electrical");

    public static Assembly Workshop { get; } = Assembly.Load("Ohmstead.Workshop");

    public static Assembly Storage { get; } = Assembly.Load("Ohmstead.Storage");

    public static Assembly App { get; } = Assembly.Load("ohmstead");

    /// <summary>A project by the last part of its name.</summary>
    public static Assembly Project(string name) =>
        name switch
        {
            "Electrical" => Electrical,
            "Workshop" => Workshop,
            "Storage" => Storage,
            "App" => App,
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no project"),
        };

    /// <summary>Source files under a folder, without what a build writes; paths with forward slashes from the root.</summary>
    public static IEnumerable<string> Files(string folder, string pattern) => Files(Root, folder, pattern);

    /// <summary>The same in another checkout.</summary>
    public static IEnumerable<string> Files(string root, string folder, string pattern) =>
        Directory
            .EnumerateFiles(Path.Combine(root, folder), pattern, SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(root, file).Replace('\\', '/'))
            .Where(file => !file.Split('/').Any(part => part is "bin" or "obj"))
            .Order(StringComparer.Ordinal);

    public static string Read(string file) => File.ReadAllText(Path.Combine(Root, file));

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Ohmstead.slnx")))
        {
            folder = folder.Parent;
        }
        return folder?.FullName ?? throw new InvalidOperationException("No Ohmstead.slnx above the tests.");
    }
}
