using System.Text.Json.Nodes;

namespace Ohmstead.Storage.Tests;

/// <summary>A demo sheet of the repository.</summary>
internal static class Sheets
{
    public const string Id = "solo-110";

    public static string Root { get; } = FindRoot();

    public static string Text { get; } = File.ReadAllText(Path.Combine(Root, "demo", "solo-110.sheet.json"));

    public static string Title { get; } = (string)JsonNode.Parse(Text)!["title"]!;

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Ohmstead.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("No Ohmstead.slnx above the tests.");
    }
}
