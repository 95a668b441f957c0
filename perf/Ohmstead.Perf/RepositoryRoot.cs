using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf;

/// <summary>The repository that this program was built from.</summary>
internal static class RepositoryRoot
{
    public static string Path { get; } = Find();

    /// <summary>Where the sample sheet is.</summary>
    public static string SamplePath { get; } = System.IO.Path.Combine(Path, "tests/Reference/sample/twin-160.sheet.json");

    /// <summary>The sample sheet.</summary>
    public static TypeSheet Sample => TypeSheetFile.Read(File.ReadAllText(SamplePath)).Required;

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "Ohmstead.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("Run this from within the repository.");
    }
}
