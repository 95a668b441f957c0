using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Dating;

/// <summary>Which detail, of those that nobody looked at yet, tells most of the year?</summary>
internal static class NextDetails
{
    /// <summary>Less than this is nothing [bit].</summary>
    private const double Nothing = 1e-9;

    /// <summary>
    /// Expected information: by how much the entropy of the years falls on average over what the detail may show. The best first, of
    /// equals in the question's order; what tells nothing is left out.
    /// </summary>
    public static ImmutableArray<NextDetail> Of(DetailTables of, int?[] seen)
    {
        var before = Entropy(of.Joint(seen));
        return
        [
            .. Enumerable
                .Range(0, seen.Length)
                .Where(d => !of.Details[d].IsAsked)
                .Select(d => new NextDetail(of.Details[d].Id, NextDetail.TellsMost, before - After(of, seen, d)))
                .Where(n => n.Bits > Nothing)
                .OrderByDescending(n => n.Bits),
        ];
    }

    private static double After(DetailTables of, int?[] seen, int detail)
    {
        var (shown, sum, entropy) = ((int?[])seen.Clone(), 0.0, 0.0);
        for (var variant = 0; variant < of.WhenNew[detail].Length; variant++)
        {
            shown[detail] = variant;
            var joint = of.Joint(shown);
            var chance = joint.Sum();
            if (chance <= 0)
                continue;
            sum += chance;
            entropy += chance * Entropy(joint);
        }
        return entropy / sum;
    }

    /// <summary>Of a law that need not add up to 1 [bit].</summary>
    private static double Entropy(double[] law)
    {
        var sum = law.Sum();
        return -law.Where(p => p > 0).Sum(p => p / sum * Math.Log2(p / sum));
    }
}
