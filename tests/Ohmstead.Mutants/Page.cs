using System.Globalization;

namespace Ohmstead.Mutants;

/// <summary>The page of what was found: a score with its interval for each folder, and every mistake that no test noticed.</summary>
internal static class Page
{
    public static void Write(string file, IReadOnlyList<Outcome> outcomes, IReadOnlyDictionary<string, int> placesOf, int draw)
    {
        var lines = new List<string>
        {
            "# Planted mistakes",
            "",
            "A test is worth the mistakes that it notices. `./test long` plants small ones in the core, one at a time: a sign, a bound, a condition,",
            "a branch, a constant twice as large, a forgotten root, the other end of an order, a line left out. Then it runs the quick tests that come",
            "by that place, to the first that fails. Some of what is never noticed changes nothing that could be seen (a bound that no number meets).",
            "",
            $"Drawn by a seed: up to {draw.ToString(CultureInfo.InvariantCulture)} a folder. Intervals are Wilson's, 95 %. The run writes each outcome down and goes on where it was stopped.",
            "",
            "| folder | places | tried | noticed | share |",
            "|---|---|---|---|---|",
        };
        foreach (var folder in outcomes.GroupBy(o => o.Folder).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var (all, noticed) = (folder.Count(), folder.Count(o => o.IsNoticed));
            var (low, high) = Wilson(noticed, all);
            lines.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"| `{folder.Key}` | {placesOf.GetValueOrDefault(folder.Key)} | {all} | {noticed} | {100.0 * noticed / all:F0} % ({100 * low:F0} to {100 * high:F0}) |"
                )
            );
        }
        lines.AddRange(["", "## Not noticed", ""]);
        foreach (var folder in outcomes.Where(o => !o.IsNoticed).GroupBy(o => o.Folder).OrderBy(g => g.Key, StringComparer.Ordinal))
            lines.AddRange([
                .. folder
                    .OrderBy(o => o.Id, StringComparer.Ordinal)
                    .Select(o => $"- `{o.Id.Replace('`', '\'')}`" + (o.By.Length == 0 ? " (no quick test comes by)" : "")),
                "",
            ]);
        File.WriteAllText(file, string.Join('\n', lines).TrimEnd() + "\n");
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
