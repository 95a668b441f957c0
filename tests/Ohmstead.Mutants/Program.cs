using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Ohmstead.Mutants;

// mutants [MINUTES]: goes on for so long (default: to the end; 0: tries nothing), then writes docs/mutants.md.
const int draw = 400;
const string seed = "1";
string[] folders = ["Diagnosis", "Readings", "Faults", "Planning"];
var slowest = TimeSpan.FromSeconds(45);
var first = TimeSpan.FromSeconds(5);
var minutes = args is [var given] ? double.Parse(given, CultureInfo.InvariantCulture) : double.PositiveInfinity;

var repository = new DirectoryInfo(AppContext.BaseDirectory);
while (!File.Exists(Path.Combine(repository.FullName, "Ohmstead.slnx")))
    repository = repository.Parent ?? throw new InvalidOperationException("No Ohmstead.slnx above this program.");
string At(params string[] parts) => Path.Combine([repository.FullName, .. parts]);
var (results, page) = (At("tests", "Ohmstead.Mutants", "outcomes.jsonl"), At("docs", "mutants.md"));

var watch = Stopwatch.StartNew();
var source = new CoreSource(repository.FullName);
var placesOf = folders.ToDictionary(f => f, source.PlacesOf);

// A third more than wanted: some do not compile.
var drawn = folders.SelectMany(f => placesOf[f].OrderBy(Lot, StringComparer.Ordinal).Take(draw * 4 / 3)).ToList();
var tests = CoreTests.Copy(repository.FullName, At(".build", "mutants"));
var woven = source.Weave(drawn, tests.Core);
var wanted = folders
    .SelectMany(f =>
        woven
            .Select((p, n) => (Place: p, Number: n))
            .Where(p => p.Place?.Folder == f)
            .Take(draw)
            .Select((p, rank) => (Place: p.Place!, p.Number, Rank: rank))
    )
    .OrderBy(p => p.Rank)
    .ToList();
Console.WriteLine(
    $"{wanted.Count.ToString(CultureInfo.InvariantCulture)} mistakes woven in; {watch.Elapsed.TotalSeconds.ToString("F0", CultureInfo.InvariantCulture)} s"
);

// What was found before holds while the place reads the same.
var ids = wanted.Select(p => p.Place.Id).ToHashSet(StringComparer.Ordinal);
var known = Outcome.ReadAll(results).Where(o => ids.Contains(o.Id)).DistinctBy(o => o.Id).ToDictionary(o => o.Id, StringComparer.Ordinal);
Outcome.WriteAll(results, known.Values);

var left = wanted.Where(p => !known.ContainsKey(p.Place.Id)).ToList();
var covers = new Dictionary<int, List<(string Class, TimeSpan Took)>>();
Parallel.ForEach(
    left.Count > 0 && minutes > 0 ? tests.Classes() : [],
    new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
    name =>
    {
        var (hasPassed, took, seen) = tests.Record(name, 10 * slowest);
        if (took > slowest)
        {
            Console.WriteLine($"too slow for this: {name}");
            return;
        }
        if (!hasPassed)
            throw new InvalidOperationException($"{name} fails with every mistake asleep.");
        lock (covers)
            foreach (var number in seen)
                (covers.TryGetValue(number, out var list) ? list : covers[number] = []).Add((name, took));
    }
);
Console.WriteLine($"classes of tests looked at; {watch.Elapsed.TotalSeconds.ToString("F0", CultureInfo.InvariantCulture)} s");

Parallel.ForEach(
    left,
    new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
    (p, loop) =>
    {
        if (watch.Elapsed.TotalMinutes > minutes)
        {
            loop.Stop();
            return;
        }
        var outcome = Try(p.Place, p.Number);
        lock (known)
        {
            known[outcome.Id] = outcome;
            outcome.AppendTo(results);
            Console.WriteLine($"{(outcome.IsNoticed ? "noticed" : "LIVES  ")} {outcome.Id}");
        }
    }
);

// Up to the first that was not tried: what is slow to find out must not be missing from the share.
var inOrder = folders.SelectMany(f =>
    wanted.Where(p => p.Place.Folder == f).Select(p => p.Place.Id).TakeWhile(known.ContainsKey).Select(id => known[id])
);
Page.Write(page, [.. inOrder], placesOf.ToDictionary(p => p.Key, p => p.Value.Count), draw);
return 0;

// By chance, and the same for a place whatever changes in other files.
static string Lot(Place place) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(seed + place.Id)));

// The quickest classes first, then the rest.
Outcome Try(Place place, int number)
{
    var classes = covers.GetValueOrDefault(number)?.OrderBy(c => c.Took).ToList() ?? [];
    var sum = TimeSpan.Zero;
    var quick = classes.TakeWhile((c, n) => (sum += c.Took) < first || n == 0).ToList();
    foreach (var batch in new[] { quick, [.. classes.Skip(quick.Count)] })
        if (
            batch.Count > 0
            && tests.Notices(
                number,
                batch.Select(c => c.Class),
                TimeSpan.FromSeconds(30) + (10 * new TimeSpan(batch.Sum(c => c.Took.Ticks)))
            )
        )
            return new Outcome(
                place.Id,
                place.Folder,
                true,
                string.Join(' ', batch.Select(c => c.Class[(c.Class.LastIndexOf('.') + 1)..]))
            );
    return new Outcome(place.Id, place.Folder, false, string.Join(' ', classes.Select(c => c.Class[(c.Class.LastIndexOf('.') + 1)..])));
}
