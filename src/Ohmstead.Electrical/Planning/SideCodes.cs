using System.Collections.Immutable;

namespace Ohmstead.Electrical.Planning;

/// <summary>
/// The cheapest way to have every two of some groups on different leads in at least one check, when any gang may be
/// checked: each group gets a word of one letter a check, all words differ, and a group pays for its clips at the start and
/// at each change of letter. (Words that all differ: the interconnect-test count of Kautz, key kautz.)
/// </summary>
internal static class SideCodes
{
    private const double ClipMinutes = 0.5;
    private const double CheckMinutes = 0.25;

    /// <summary>By check, by group: on the second lead or not. Empty for fewer than two groups.</summary>
    /// <param name="clips">Number of clips of each group.</param>
    public static ImmutableArray<bool[]> Of(IReadOnlyList<int> clips)
    {
        if (clips.Count < 2)
            return [];
        var heaviestFirst = Enumerable.Range(0, clips.Count).OrderByDescending(g => clips[g]).ToArray();
        var best = Enumerable
            .Range(1, clips.Count)
            .Where(checks => checks >= 31 || 1 << checks >= clips.Count)
            .Select(checks => Words(checks, clips.Count))
            .MinBy(words => Minutes(words, heaviestFirst, clips))!;
        var sides = new bool[best[0].Length][];
        for (var check = 0; check < sides.Length; check++)
        {
            sides[check] = new bool[clips.Count];
            for (var n = 0; n < clips.Count; n++)
                sides[check][heaviestFirst[n]] = best[n][check];
        }
        // A check with nothing on one lead tells nothing.
        return [.. sides.Where(s => s.Contains(true) && s.Contains(false))];
    }

    private static double Minutes(bool[][] words, int[] heaviestFirst, IReadOnlyList<int> clips) =>
        (CheckMinutes * words[0].Length) + words.Select((w, n) => ClipMinutes * clips[heaviestFirst[n]] * (1 + Changes(w))).Sum();

    private static int Changes(bool[] word) => word.Zip(word.Skip(1)).Count(p => p.First != p.Second);

    /// <summary>Different words of one length, those of fewest changes first; with every word its opposite.</summary>
    private static bool[][] Words(int length, int count) =>
        [.. Enumerable.Range(0, length).SelectMany(changes => WithChanges(length, changes)).Take(count)];

    private static IEnumerable<bool[]> WithChanges(int length, int changes)
    {
        foreach (var places in Choose(length - 1, changes))
        {
            var word = new bool[length];
            for (var k = 1; k < length; k++)
                word[k] = word[k - 1] ^ places.Contains(k - 1);
            yield return word;
            yield return [.. word.Select(b => !b)];
        }
    }

    private static IEnumerable<int[]> Choose(int among, int count, int from = 0)
    {
        if (count == 0)
        {
            yield return [];
            yield break;
        }
        for (var first = from; first <= among - count; first++)
            foreach (var rest in Choose(among, count - 1, first + 1))
                yield return [first, .. rest];
    }
}
