using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Dating;

/// <summary>How the details that were seen argue for a range of years, and which of them was probably swapped.</summary>
internal static class DetailArguments
{
    /// <summary>Between this and its inverse a detail is neither for nor against. Common practice, no source.</summary>
    private const double Weighs = 1.5;

    /// <summary>Of each detail that was seen, in their order.</summary>
    /// <param name="joint">Each year together with all that was seen.</param>
    public static ImmutableArray<Argued> Of(DetailTables of, int?[] seen, double[] joint, YearRange range) =>
        [.. Enumerable.Range(0, seen.Length).Where(d => seen[d] is not null).Select(d => Of(of, seen, joint, range, d))];

    private static Argued Of(DetailTables of, int?[] seen, double[] joint, YearRange range, int detail)
    {
        var others = (int?[])seen.Clone();
        others[detail] = null;
        var (with, without) = (range.Sums(joint), range.Sums(of.Joint(others)));
        var times = with.Inside / without.Inside / (with.Outside / without.Outside);
        var variant = seen[detail]!.Value;
        var (fits, swapped) = (0.0, 0.0);
        for (var y = range.First; y <= range.Last; y++)
        {
            fits += joint[y] * of.WhenNew[detail][variant][y];
            swapped += joint[y] * of.WhenSwapped[detail][variant][y];
        }
        var replaced = Math.Clamp(1 - (of.Joint(seen, detail).Sum() / joint.Sum()), 0, 1);
        return new(
            new(
                of.Details[detail].Id,
                times,
                100 * Math.Min(1, fits / with.Inside),
                100 * replaced,
                Says(times, isLaterLikelier: replaced > 0 && fits * Weighs < swapped)
            ),
            swapped > 0 ? fits / swapped : double.PositiveInfinity
        );
    }

    /// <param name="times">How many times as likely in the range as outside; not a number where nothing is left outside.</param>
    /// <param name="isLaterLikelier">True where it can have been swapped, and what it shows is clearly likelier on a part that came later.</param>
    private static string Says(double times, bool isLaterLikelier) =>
        times > Weighs ? "for"
        : isLaterLikelier || times < 1 / Weighs ? "against"
        : "neither";

    /// <summary>The one that argues most against; null where none does.</summary>
    public static Argued? MostAgainst(ImmutableArray<Argued> argued) =>
        argued.Where(a => a.Answer.Argues == "against").OrderBy(a => a.OriginalTimes).ThenBy(a => a.Answer.Times).FirstOrDefault();
}

/// <summary>How a detail argues, for the answer.</summary>
/// <param name="OriginalTimes">How many times as likely what it shows is on a unit of the range as it was made, as on a swapped part.</param>
internal sealed record Argued(DetailArgument Answer, double OriginalTimes);
