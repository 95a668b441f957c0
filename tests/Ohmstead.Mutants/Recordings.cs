using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Ohmstead.Mutants;

/// <summary>
/// Which quick classes of tests come by which mistakes. What a class did is kept in a file and holds while the core with its mistakes, the
/// class's own file and the files that classes share read the same.
/// </summary>
internal sealed class Recordings
{
    /// <summary>A class is taken for so much quicker where its folder is the mistake's: there the tests of the place are.</summary>
    private const double OwnFolder = 0.25;

    private const string SlowEnding = "slow";

    private readonly CoreTests tests;
    private readonly string folder;
    private readonly string common;
    private readonly Dictionary<string, byte[]> own;
    private readonly Dictionary<int, List<Covering>> covers = [];

    /// <param name="folder">Where they are kept.</param>
    /// <param name="sources">The folder of the tests' source.</param>
    public Recordings(CoreTests tests, string folder, string sources)
    {
        (this.tests, this.folder) = (tests, Directory.CreateDirectory(folder).FullName);
        var files = Directory
            .EnumerateFiles(sources, "*", SearchOption.AllDirectories)
            .Where(f => !Path.GetRelativePath(sources, f).Split(Path.DirectorySeparatorChar).Any(p => p is "bin" or "obj"))
            .Order(StringComparer.Ordinal)
            .ToLookup(f => f.EndsWith("Tests.cs", StringComparison.Ordinal));
        own = files[true]
            .GroupBy(f => Path.GetFileNameWithoutExtension(f), StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.SelectMany(File.ReadAllBytes).ToArray(), StringComparer.Ordinal);
        common = Mark([.. File.ReadAllBytes(tests.Core), .. files[false].SelectMany(File.ReadAllBytes)]);
    }

    /// <summary>Classes that took too long to be asked, as far as they have been looked at.</summary>
    public IReadOnlyList<string> Slow =>
        [
            .. own.Where(o => Directory.EnumerateFiles(folder, $"*.{o.Key}-{Mark(o.Value)}.{SlowEnding}").Any())
                .Select(o => o.Key)
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Runs each class once with all mistakes asleep, or takes what is known of it.</summary>
    /// <param name="most">Processor time of a quick class.</param>
    public void Make(TimeSpan most) =>
        Parallel.ForEach(
            tests.Classes(),
            new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
            name =>
            {
                if (Of(name, most) is { } recording)
                    lock (covers)
                        foreach (var (number, isSame) in recording.Seen)
                            (covers.TryGetValue(number, out var list) ? list : covers[number] = []).Add(
                                new(name, isSame ? recording.TookAgain : recording.Took, isSame)
                            );
            }
        );

    /// <summary>The classes that come by a mistake, those first that promise most for their time.</summary>
    public IReadOnlyList<Covering> Of(int mistake, string ofFolder) =>
        [
            .. covers
                .GetValueOrDefault(mistake, [])
                .OrderBy(c => c.Took * (c.Name.Contains($".{ofFolder}.", StringComparison.Ordinal) ? OwnFolder : 1))
                .ThenBy(c => c.Name, StringComparer.Ordinal),
        ];

    /// <summary>The name of a class without its namespace.</summary>
    public static string Short(string name) => name[(name.LastIndexOf('.') + 1)..];

    private Recording? Of(string name, TimeSpan most)
    {
        var itself = own.GetValueOrDefault(Short(name), []);
        // One that was too slow stays so until its own file changes, whatever becomes of the core.
        var slowFile = FileOf(name, itself, SlowEnding);
        if (File.Exists(slowFile))
            return null;
        var file = FileOf(name, [.. Encoding.UTF8.GetBytes(common), .. itself], "txt");
        if (File.Exists(file))
        {
            int[][] numbers =
            [
                .. File.ReadLines(file).Select(l => l.Split(' ').Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToArray()),
            ];
            return new(
                TimeSpan.FromMilliseconds(numbers[0][0]),
                TimeSpan.FromMilliseconds(numbers[0][1]),
                numbers[1..].ToDictionary(n => n[0], n => n[1] == 1)
            );
        }
        if (tests.Record(name, most) is not { } made)
        {
            File.WriteAllText(slowFile, "");
            return null;
        }
        File.WriteAllLines(
            file,
            made.Seen.Select(s => Line(s.Key, s.Value ? 1 : 0))
                .Prepend(Line((int)made.Took.TotalMilliseconds, (int)made.TookAgain.TotalMilliseconds))
        );
        return made;
    }

    private static string Line(int first, int second) => string.Create(CultureInfo.InvariantCulture, $"{first} {second}");

    private string FileOf(string name, byte[] read, string ending) => Path.Combine(folder, $"{name}-{Mark(read)}.{ending}");

    private static string Mark(byte[] bytes) => Convert.ToHexString(SHA256.HashData(bytes))[..16];
}
