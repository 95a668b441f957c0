namespace Ohmstead.Electrical.Reckoning.Dating;

/// <summary>Years that follow one another, by their places from the first year of making.</summary>
/// <param name="Chance">Of all of them together.</param>
internal sealed record YearRange(int First, int Last, double Chance)
{
    /// <summary>A sum of chances that should be exact may miss by so much.</summary>
    private const double Rounding = 1e-12;

    /// <summary>The shortest range that is as probable as asked for; of two the more probable, then the earlier.</summary>
    public static YearRange Shortest(double[] years, double share)
    {
        for (var length = 1; length < years.Length; length++)
        {
            var best = new YearRange(0, length - 1, 0);
            for (var first = 0; first + length <= years.Length; first++)
            {
                var chance = years.AsSpan(first, length).ToArray().Sum();
                if (chance > best.Chance + Rounding)
                    best = new(first, first + length - 1, chance);
            }
            if (best.Chance >= share - Rounding)
                return best;
        }
        return new(0, years.Length - 1, years.Sum());
    }

    /// <summary>Sums of a law over the years in the range and over the others.</summary>
    public (double Inside, double Outside) Sums(double[] law)
    {
        var (inside, outside) = (0.0, 0.0);
        for (var y = 0; y < law.Length; y++)
            if (y >= First && y <= Last)
                inside += law[y];
            else
                outside += law[y];
        return (inside, outside);
    }
}
