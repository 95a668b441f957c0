using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests;

/// <summary>The data files that tests are held against, and the sheets of the repository.</summary>
internal static class Reference
{
    public static string Root { get; } = FindRoot();

    /// <summary>The worked example.</summary>
    public static TypeSheet Twin160 { get; } = Sheet("tests/Reference/sample/twin-160.sheet.json");

    /// <summary>The demo sheets of the project, in order of their names.</summary>
    public static IReadOnlyList<string> DemoSheets { get; } = Names("demo", "*.sheet.json");

    public static string PathOf(string file) => Path.Combine(Root, file);

    public static string Text(string file) => File.ReadAllText(PathOf(file));

    public static JsonObject Json(string file) => JsonNode.Parse(Text(file))!.AsObject();

    public static TypeSheet Sheet(string file) => TypeSheetFile.Read(Text(file)).Required;

    /// <summary>Files of a folder, as paths from the root with forward slashes.</summary>
    public static IReadOnlyList<string> Names(string folder, string pattern) =>
        Directory.Exists(PathOf(folder))
            ?
            [
                .. Directory
                    .EnumerateFiles(PathOf(folder), pattern)
                    .Select(f => $"{folder}/{Path.GetFileName(f)}")
                    .Order(StringComparer.Ordinal),
            ]
            : [];

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Ohmstead.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("No Ohmstead.slnx above the tests.");
    }
}
