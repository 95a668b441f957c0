using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary>Reads the files that verbs work on, or refuses them with every problem named.</summary>
internal static class InputFiles
{
    private const long MostBytes = 20_000_000;
    private const int MostProblems = 200;

    public static TypeSheet Sheet(string path) => Required(path, TypeSheetFile.Read(Text(path)));

    /// <summary>The sheet, changed as the unit file says where one is given.</summary>
    public static TypeSheet Sheet(string path, string? unitPath)
    {
        var sheet = Sheet(path);
        return unitPath is null ? sheet : Required(unitPath, UnitFile.Read(Text(unitPath), sheet));
    }

    public static UnitReadings Readings(string path, TypeSheet sheet) => Required(path, ReadingsFile.Read(Text(path), sheet));

    public static IReadOnlyList<Problem> SheetProblems(string path) => TypeSheetFile.Read(Text(path)).Problems;

    public static RefusedInput Refuse(string path, IReadOnlyList<Problem> problems)
    {
        var lines = problems.Take(MostProblems).Select(p => $"{path}: {p}").ToList();
        if (problems.Count > MostProblems) lines.Add(string.Create(CultureInfo.InvariantCulture, $"{path}: and {problems.Count - MostProblems} more"));
        return new RefusedInput(lines);
    }

    private static T Required<T>(string path, Parsed<T> parsed)
        where T : class => parsed.IsSound ? parsed.Value! : throw Refuse(path, parsed.Problems);

    private static string Text(string path)
    {
        var file = new FileInfo(path);
        if (Directory.Exists(path)) throw new RefusedInput($"{path}: is a folder; a file is expected");
        if (!file.Exists) throw new RefusedInput($"{path}: there is no such file");
        if (file.Length > MostBytes) throw new RefusedInput(string.Create(CultureInfo.InvariantCulture, $"{path}: has {file.Length / 1e6:F0} MB; at most {MostBytes / 1e6:F0} MB are read"));
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(File.ReadAllBytes(path)).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            throw new RefusedInput($"{path}: $: is not UTF-8 text; save it as UTF-8");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new RefusedInput($"{path}: cannot be read: {e.Message}");
        }
    }
}
