using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary>Reads the files that verbs work on, or refuses them with every problem named, a line each.</summary>
internal static class InputFiles
{
    private const int MostProblems = 200;

    /// <summary>A type sheet; of an outline, the wide sheet that is drafted from it.</summary>
    public static TypeSheet Sheet(string path)
    {
        var text = TextFile.Read(path);
        return OutlineFile.IsOne(text) ? Required(path, OutlineFile.Read(text)).Kinds[0].Sheet : Required(path, TypeSheetFile.Read(text));
    }

    /// <summary>An outline.</summary>
    public static OutlineKinds Outline(string path) => Required(path, OutlineFile.Read(TextFile.Read(path)));

    /// <summary>The sheet, changed as the unit file says where one is given.</summary>
    public static TypeSheet Sheet(string path, string? unitPath)
    {
        var sheet = Sheet(path);
        return unitPath is null ? sheet : Required(unitPath, UnitFile.Read(TextFile.Read(unitPath), sheet));
    }

    public static UnitReadings Readings(string path, TypeSheet sheet) => Required(path, ReadingsFile.Read(TextFile.Read(path), sheet));

    /// <summary>Readings of which some may be given whole, and the sheet with those that it did not have.</summary>
    public static AdoptedReadings WholeReadings(string path, TypeSheet sheet) => Required(path, Electrical.Readings.WholeReadings.Read(TextFile.Read(path), sheet));

    /// <summary>Several readings files; the problems of all of them are named.</summary>
    public static ImmutableArray<UnitReadings> Readings(IEnumerable<string> paths, TypeSheet sheet)
    {
        var (sound, wrong) = (ImmutableArray.CreateBuilder<UnitReadings>(), new List<string>());
        foreach (var path in paths)
        {
            try
            {
                sound.Add(Readings(path, sheet));
            }
            catch (RefusedInput refused)
            {
                wrong.AddRange(refused.Lines);
            }
        }
        return wrong.Count == 0 ? sound.ToImmutable() : throw new RefusedInput(wrong);
    }

    public static IReadOnlyList<Problem> SheetProblems(string path)
    {
        var text = TextFile.Read(path);
        return OutlineFile.IsOne(text) ? OutlineFile.Read(text).Problems : TypeSheetFile.Read(text).Problems;
    }

    public static RefusedInput Refuse(string path, IReadOnlyList<Problem> problems)
    {
        var lines = problems.Take(MostProblems).Select(p => $"{path}: {p.ToString().ReplaceLineEndings(" ")}").ToList();
        if (problems.Count > MostProblems) lines.Add(string.Create(CultureInfo.InvariantCulture, $"{path}: and {problems.Count - MostProblems} more"));
        return new RefusedInput(lines);
    }

    private static T Required<T>(string path, Parsed<T> parsed)
        where T : class => parsed.IsSound ? parsed.Value! : throw Refuse(path, parsed.Problems);
}
