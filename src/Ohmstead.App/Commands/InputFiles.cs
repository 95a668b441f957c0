using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>Reads the files that verbs work on, or refuses them with every problem named, a line each.</summary>
internal static class InputFiles
{
    private const int MostProblems = 200;

    /// <summary>A type sheet; of an outline, the wide sheet that is drafted from it. Of several kinds that it may stand for the first, and that is said.</summary>
    public static TypeSheet Sheet(string path) => SheetOf(path, TextFile.Read(path));

    private static TypeSheet SheetOf(string path, string text)
    {
        if (!OutlineFile.IsOne(text))
            return Required(path, TypeSheetFile.Read(text));
        var kinds = Required(path, OutlineFile.Read(text)).Kinds;
        if (!kinds[0].Choices.IsEmpty)
            Console.Error.WriteLine(
                $"{path}: {Shown.Choices(kinds[0])}, the first of {Counted.Of(kinds.Length, "type")} that this outline may stand for. To find out which: ohmstead draft, with readings."
            );
        return kinds[0].Sheet;
    }

    /// <summary>
    /// The kinds that an outline may stand for, with the readings of some units. A kind that cannot have a reading is left out; where
    /// none can, the files are refused for what the first lacks.
    /// </summary>
    /// <param name="unitPath">How the one unit differs from its kind, or null.</param>
    public static ImmutableArray<KindReadings> KindReadings(string path, string text, string[] files, string? unitPath = null)
    {
        var unitText = unitPath is null ? "" : TextFile.Read(unitPath);
        var texts = files.Select(f => (File: f, Text: TextFile.Read(f))).ToList();
        var (kinds, wrong) = (ImmutableArray.CreateBuilder<KindReadings>(), new List<string>());
        var isFirst = true;
        foreach (var kind in Required(path, OutlineFile.Read(text)).Kinds)
        {
            var changed = unitPath is null ? new(kind.Sheet, []) : UnitFile.Read(unitText, kind.Sheet);
            if (!changed.IsSound)
            {
                if (isFirst)
                    wrong.AddRange(Refuse(unitPath!, changed.Problems).Lines);
                isFirst = false;
                continue;
            }
            var (sheet, units) = (changed.Required, ImmutableArray.CreateBuilder<UnitReadings>());
            foreach (var (file, taken) in texts)
            {
                var read = Electrical.Readings.WholeReadings.Read(taken, sheet, isOfAnySheet: true);
                if (read.IsSound)
                {
                    sheet = read.Value!.Sheet;
                    units.Add(read.Value.Readings);
                }
                else if (isFirst)
                    wrong.AddRange(Refuse(file, read.Problems).Lines);
            }
            isFirst = false;
            if (units.Count == texts.Count)
                kinds.Add(new(kind, sheet, units.ToImmutable()));
        }
        return kinds.Count > 0 ? kinds.ToImmutable() : throw new RefusedInput(wrong);
    }

    /// <summary>The sheet, changed as the unit file says where one is given.</summary>
    public static TypeSheet Sheet(string path, string? unitPath) => Sheet(path, TextFile.Read(path), unitPath);

    /// <summary>The same of a text that was read: a pipe is read once.</summary>
    public static TypeSheet Sheet(string path, string text, string? unitPath)
    {
        var sheet = SheetOf(path, text);
        return unitPath is null ? sheet : Required(unitPath, UnitFile.Read(TextFile.Read(unitPath), sheet));
    }

    /// <summary>The kinds that a unit may be, each with its readings; every kind that an outline may stand for is one.</summary>
    public static ImmutableArray<PossibleKind> PossibleKinds(IEnumerable<string> paths, string readingsPath)
    {
        var text = TextFile.Read(readingsPath);
        var (problems, sound) = (new List<IReadOnlyList<Problem>>(), 0);
        // What is wrong under one kind alone excludes that kind; what is wrong under all of them is the file's own.
        PossibleKind Read(string name, double chance, TypeSheet sheet)
        {
            var read = Electrical.Drafting.PossibleKinds.Read(name, chance, sheet, text);
            if (read.IsSound)
            {
                sound++;
                return read.Required;
            }
            problems.Add(read.Problems);
            return new(name, chance, sheet, null, $"{read.Problems[0].Path} {read.Problems[0].Wrong}");
        }
        ImmutableArray<PossibleKind> all =
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
        return sound > 0 ? all : throw Refuse(readingsPath, problems[0]);
    }

    public static UnitReadings Readings(string path, TypeSheet sheet) => Required(path, ReadingsFile.Read(TextFile.Read(path), sheet));

    /// <summary>Readings of which some may be given whole, and the sheet with those that it did not have.</summary>
    public static AdoptedReadings WholeReadings(string path, TypeSheet sheet) =>
        Required(path, Electrical.Readings.WholeReadings.Read(TextFile.Read(path), sheet));

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
        if (problems.Count > MostProblems)
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"{path}: and {problems.Count - MostProblems} more"));
        return new RefusedInput(lines);
    }

    private static T Required<T>(string path, Parsed<T> parsed)
        where T : class => parsed.IsSound ? parsed.Value! : throw Refuse(path, parsed.Problems);
}
