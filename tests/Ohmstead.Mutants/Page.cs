using System.Globalization;

namespace Ohmstead.Mutants;

/// <summary>The page of what was found: a score with its interval for each folder, and every mistake that no test noticed.</summary>
internal static class Page
{
    public static void Write(
        string file,
        IReadOnlyList<Outcome> outcomes,
        IReadOnlyDictionary<string, int> placesOf,
        IReadOnlyDictionary<string, string> equivalent,
        IReadOnlyList<string> notAsked,
        int draw
    )
    {
        var lines = new List<string>
        {
            "# Planted mistakes",
            "",
            "A test is worth the mistakes that it notices. `./test long` plants small ones in the core, one at a time: a sign, a bound, a condition,",
            "a branch, a constant twice as large, a forgotten root, the other end of an order, a line left out. Then it runs the quick classes of",
            "tests that come by that place, to the first that fails: in processes that stay, and in a fresh one where what a class made before could",
            "hide the mistake; what is noticed is asked once more with the mistake asleep. Not asked, because they take more than ten seconds of",
            "processor time, or hang on a clock:",
            $"{(notAsked.Count == 0 ? "none" : string.Join(", ", notAsked))}.",
            "",
            $"The places are drawn by a seed, up to {draw.ToString(CultureInfo.InvariantCulture)} a folder, and tried in the order of the draw; the table says how far the runs came. A mistake that",
            "lived was looked at, and often got a test: \"at first\" is the share before that. A mistake that changes nothing which could be",
            "seen is listed with its reason and counts as not noticed. Intervals are Wilson's, 95 %.",
            "",
            "What was found of a place holds while its text stays as it is, wherever in its file it moves to; the next run tries the others anew.",
            "",
            "`dotnet run -c Release --project tests/Ohmstead.Mutants -- 20 Faults Planning` goes on for twenty minutes in these folders;",
            "with the word `again` it tries once more what was not noticed.",
            "",
            "| folder | places | tried | noticed at first | noticed now | change nothing |",
            "|---|---|---|---|---|---|",
        };
        foreach (var folder in ByFolder(outcomes))
            lines.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"| `{folder.Key}` | {placesOf.GetValueOrDefault(folder.Key)} | {folder.Count()} | {Share(folder.Count(o => o.WasNoticedAtFirst), folder.Count())} | {Share(folder.Count(o => o.IsNoticed), folder.Count())} | {folder.Count(o => equivalent.ContainsKey(o.Id))} |"
                )
            );
        lines.AddRange(["", "## Not noticed", ""]);
        foreach (var folder in ByFolder(outcomes.Where(o => !o.IsNoticed && !equivalent.ContainsKey(o.Id))))
            lines.AddRange([.. folder.Select(o => Item(o) + (o.By.Length == 0 ? " (no quick test comes by)" : "")), ""]);
        lines.AddRange(["## Change nothing that could be seen", ""]);
        lines.AddRange(
            outcomes
                .Where(o => !o.IsNoticed && equivalent.ContainsKey(o.Id))
                .OrderBy(o => o.Id, StringComparer.Ordinal)
                .Select(o => $"{Item(o)}: {equivalent[o.Id]}")
        );
        File.WriteAllText(file, string.Join('\n', lines).TrimEnd() + "\n");
    }

    private static IEnumerable<IGrouping<string, Outcome>> ByFolder(IEnumerable<Outcome> outcomes) =>
        outcomes.OrderBy(o => o.Id, StringComparer.Ordinal).GroupBy(o => o.Folder).OrderBy(g => g.Key, StringComparer.Ordinal);

    private static string Item(Outcome outcome) => $"- `{outcome.Id.Replace('`', '\'')}`";

    private static string Share(int hits, int all)
    {
        var (low, high) = Wilson(hits, all);
        return string.Create(CultureInfo.InvariantCulture, $"{hits}: {100.0 * hits / all:F0} % ({100 * low:F0} to {100 * high:F0})");
    }

    /// <summary>Wilson's interval of a share (E. B. Wilson, JASA 22, 1927), 95 %.</summary>
    private static (double Low, double High) Wilson(int hits, int all)
    {
        const double z = 1.959964;
        var share = (double)hits / all;
        var (centre, half) = (share + (z * z / (2 * all)), z * Math.Sqrt((share * (1 - share) / all) + (z * z / (4.0 * all * all))));
        return ((centre - half) / (1 + (z * z / all)), (centre + half) / (1 + (z * z / all)));
    }
}
