using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Ohmstead.Mutants;

/// <summary>
/// mutants [MINUTES] [again] [FOLDER…]: goes on for so long (default: to the end; 0: tries nothing) in these folders of the core (default: all
/// that are drawn from), then writes docs/mutants.md. With "again" what was not noticed is tried once more before anything else.
/// </summary>
internal static class Drawing
{
    private const int Draw = 400;
    private const string Seed = "1";
    private static readonly string[] DrawnFrom = ["Diagnosis", "Readings", "Faults", "Planning"];
    private static readonly TimeSpan Quick = TimeSpan.FromSeconds(10);

    public static int Run(string[] args)
    {
        var minutes =
            args is [var first, ..] && double.TryParse(first, CultureInfo.InvariantCulture, out var given)
                ? given
                : double.PositiveInfinity;
        var folders = args.Where(DrawnFrom.Contains).Distinct(StringComparer.Ordinal).ToArray() is { Length: > 0 } some ? some : DrawnFrom;
        if (args.Skip(double.IsFinite(minutes) ? 1 : 0).FirstOrDefault(a => a != "again" && !DrawnFrom.Contains(a)) is { } unknown)
            throw new ArgumentException($"\"{unknown}\" is neither \"again\" nor one of {string.Join(", ", DrawnFrom)}.");

        var repository = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(repository.FullName, "Ohmstead.slnx")))
            repository = repository.Parent ?? throw new InvalidOperationException("No Ohmstead.slnx above this program.");
        string At(params string[] parts) => Path.Combine([repository.FullName, .. parts]);
        var (results, page) = (At("tests", "Ohmstead.Mutants", "outcomes.jsonl"), At("docs", "mutants.md"));
        var equivalent = Equivalent.ReadAll(At("tests", "Ohmstead.Mutants", "equivalent.jsonl"));

        var watch = Stopwatch.StartNew();
        var source = new CoreSource(repository.FullName);
        var placesOf = DrawnFrom.ToDictionary(f => f, source.PlacesOf);

        // A third more than wanted: some do not compile.
        var drawn = DrawnFrom.SelectMany(f => placesOf[f].OrderBy(Lot, StringComparer.Ordinal).Take(Draw * 4 / 3)).ToList();
        using var tests = CoreTests.Copy(repository.FullName, At(".build", "mutants"));
        var woven = source.Weave(drawn, tests.Core);
        var wanted = DrawnFrom
            .SelectMany(f =>
                woven
                    .Select((p, n) => (Place: p, Number: n))
                    .Where(p => p.Place?.Folder == f)
                    .Take(Draw)
                    .Select((p, rank) => (Place: p.Place!, p.Number, Rank: rank))
            )
            .OrderBy(p => p.Rank)
            .ToList();
        Say($"{wanted.Count} mistakes woven in");

        // What was found before holds while the place reads the same.
        var known = Outcome.ReadAll(results);
        foreach (var gone in known.Keys.Except(wanted.Select(p => p.Place.Id)).ToList())
            known.Remove(gone);
        Outcome.WriteAll(results, known.Values);

        bool IsOpen(Place p) =>
            !known.TryGetValue(p.Id, out var o) || (args.Contains("again") && !o.IsNoticed && !equivalent.ContainsKey(p.Id));
        var left = wanted
            .Where(p => folders.Contains(p.Place.Folder) && IsOpen(p.Place))
            .OrderBy(p => !known.ContainsKey(p.Place.Id))
            .ToList();
        var recordings = new Recordings(tests, At(".build", "mutants-seen"), At("tests", "Ohmstead.Electrical.Tests"));
        if (left.Count > 0 && minutes > 0)
            recordings.Make(Quick);
        Say($"classes of tests looked at; too slow to be asked: {string.Join(' ', recordings.Slow)}");

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
                var outcome = Trial.Of(p.Place, p.Number, tests, recordings);
                lock (known)
                {
                    if (known.TryGetValue(outcome.Id, out var before))
                        outcome = outcome with { WasNoticedAtFirst = before.WasNoticedAtFirst };
                    known[outcome.Id] = outcome;
                    outcome.AppendTo(results);
                    Say($"{(outcome.IsNoticed ? "noticed" : "LIVES  ")} {outcome.Id} (line {p.Place.Line}; {outcome.By})");
                }
            }
        );
        Outcome.WriteAll(results, known.Values);

        // Up to the first that was not tried: what is slow to find out must not be missing from the share.
        var inOrder = DrawnFrom.SelectMany(f =>
            wanted.Where(p => p.Place.Folder == f).Select(p => p.Place.Id).TakeWhile(known.ContainsKey).Select(id => known[id])
        );
        Page.Write(page, [.. inOrder], placesOf.ToDictionary(p => p.Key, p => p.Value.Count), equivalent, recordings.Slow, Draw);
        return 0;

        void Say(FormattableString what) =>
            Console.WriteLine(FormattableString.Invariant($"{watch.Elapsed.TotalSeconds:F0} s: {FormattableString.Invariant(what)}"));
    }

    /// <summary>By chance, and the same for a place whatever changes in other files.</summary>
    private static string Lot(Place place) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(Seed + place.Id)));
}
