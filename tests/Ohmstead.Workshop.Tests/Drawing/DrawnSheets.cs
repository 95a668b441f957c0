using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.Workshop.Tests.Drawing;

/// <summary>The sheets that are drawn in the tests: the demo, the sample sheet and drawn ones.</summary>
internal static class DrawnSheets
{
    private static readonly string Root = FindRoot();

    private static readonly Dictionary<string, DrawingList> Drawn = new(StringComparer.Ordinal);

    /// <summary>Paths from the root, in order.</summary>
    public static IReadOnlyList<string> All { get; } =
    [.. Names("demo"), .. Names("tests/Reference/sample"), .. Names("tests/Reference/ngspice/random"), .. Names("tests/Reference/units")];

    public static TheoryData<string> Each { get; } = [.. All];

    public static string Text(string file) => File.ReadAllText(Path.Combine(Root, file));

    public static TypeSheet Sheet(string file) => TypeSheetFile.Read(Text(file)).Required;

    /// <summary>The bare drawing of a sheet, made once.</summary>
    public static DrawingList Of(string file)
    {
        lock (Drawn)
        {
            if (Drawn.TryGetValue(file, out var drawing))
                return drawing;
            return Drawn[file] = Draw(Sheet(file));
        }
    }

    public static DrawingList Draw(TypeSheet sheet) => CircuitDrawing.Draw(CircuitLayout.Of(sheet), Overlay.None);

    private static IEnumerable<string> Names(string folder) =>
        Directory
            .EnumerateFiles(Path.Combine(Root, folder), "*.sheet.json")
            .Select(f => $"{folder}/{Path.GetFileName(f)}")
            .Order(StringComparer.Ordinal);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Ohmstead.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("No Ohmstead.slnx above the tests.");
    }
}
