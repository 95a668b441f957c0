using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Drafting;
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

    /// <summary>
    /// The kinds that an outline may stand for, with the readings of some units. A kind that cannot have a reading is left out; where
    /// none can, the files are refused for what the first lacks.
    /// </summary>
    public static ImmutableArray<KindReadings> KindReadings(string path, string[] files)
    {
        var texts = files.Select(f => (File: f, Text: TextFile.Read(f))).ToList();
        var (kinds, wrong) = (ImmutableArray.CreateBuilder<KindReadings>(), new List<string>());
        var isFirst = true;
        foreach (var kind in Required(path, OutlineFile.Read(TextFile.Read(path))).Kinds)
        {
            var (sheet, units) = (kind.Sheet, ImmutableArray.CreateBuilder<UnitReadings>());
            foreach (var (file, text) in texts)
            {
                var read = Electrical.Readings.WholeReadings.Read(text, sheet, isOfAnySheet: true);
                if (read.IsSound)
                {
                    sheet = read.Value!.Sheet;
                    units.Add(read.Value.Readings);
                }
                else if (isFirst) wrong.AddRange(Refuse(file, read.Problems).Lines);
            }
            isFirst = false;
            if (units.Count == texts.Count) kinds.Add(new(kind, sheet, units.ToImmutable()));
        }
        return kinds.Count > 0 ? kinds.ToImmutable() : throw new RefusedInput(wrong);
    }

    /// <summary>The sheet, changed as the unit file says where one is given.</summary>
    public static TypeSheet Sheet(string path, string? unitPath)
    {
        var sheet = Sheet(path);
        return unitPath is null ? sheet : Required(unitPath, UnitFile.Read(TextFile.Read(unitPath), sheet));
    }

    /// <summary>The kinds that a unit may be, each with its readings; every kind that an outline may stand for is one.</summary>
    public static ImmutableArray<PossibleKind> PossibleKinds(IEnumerable<string> paths, string readingsPath)
    {
        var text = TextFile.Read(readingsPath);
        PossibleKind Read(string name, double chance, TypeSheet sheet) => Required(readingsPath, Electrical.Drafting.PossibleKinds.Read(name, chance, sheet, text));
        return
        [
            .. paths.SelectMany(path =>
            {
                var sheet = TextFile.Read(path);
                if (!OutlineFile.IsOne(sheet))
                {
                    var known = Required(path, TypeSheetFile.Read(sheet));
                    return (IEnumerable<PossibleKind>)[Read(known.Id, 1, known)];
                }
                var kinds = Required(path, OutlineFile.Read(sheet)).Kinds;
                return kinds.Select(k => Read(kinds.Length == 1 ? k.Sheet.Id : $"{k.Sheet.Id}:{k.Id}", k.Chance, k.Sheet));
            }),
        ];
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
