using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Dating;

/// <summary>The years in which a kind was made, and from which years a part that was fitted later can be.</summary>
/// <param name="First">First year of making.</param>
/// <param name="Last">Last year of making.</param>
/// <param name="Chances">Of each year from the first to the last, before anything was seen; together 1.</param>
/// <param name="Now">The year of now; not before the last.</param>
/// <param name="DonorShare">Share of swapped parts that come from another unit of the kind [0..1].</param>
internal sealed record MadeYears(int First, int Last, ImmutableArray<double> Chances, int Now, double DonorShare)
{
    /// <summary>Before it nothing of this sort was made.</summary>
    private const int Earliest = 1800;

    private const int Latest = 2200;

    /// <summary>One kind in so many years: more is a slip of the pen.</summary>
    private const double MostYears = 200;

    /// <summary>Common practice, no source; editable.</summary>
    private const double UsualDonorPercent = 20;

    /// <summary>Years that a part can be of: from the first of making to now.</summary>
    public int PartYears => Now - First + 1;

    /// <summary>Reads <c>made</c>, <c>nowYear</c> and <c>donorPercent</c>.</summary>
    public static MadeYears Read(QuestionFields fields)
    {
        var donors = fields.Number("donorPercent", NumberRange.Percent, UsualDonorPercent) / 100;
        var now = Year(fields, "nowYear");
        if (fields.NeededPart("made", "{ \"firstYear\", \"lastYear\" }") is not { } made)
            return new(now, now, [1], now, donors);
        var (first, last) = (Year(made, "firstYear"), Year(made, "lastYear"));
        if (!made.IsSoundAt("firstYear") || !made.IsSoundAt("lastYear"))
            return new(first, first, [1], first, donors);
        if (last < first)
            made.Report("lastYear", "is before firstYear", "the last year of making is expected");
        else if (last - first >= MostYears)
            made.Report("lastYear", "is 200 years or more after firstYear", "at most 200 years are expected");
        else if (fields.IsSoundAt("nowYear") && now < last)
            fields.Report("nowYear", "is before made.lastYear", "the year of now is expected");
        if (last < first || last - first >= MostYears)
            return new(first, first, [1], first, donors);
        return new(first, last, Shares(made, last - first + 1), Math.Max(now, last), donors);
    }

    /// <summary>A required year.</summary>
    internal static int Year(QuestionFields fields, string name) => fields.Whole(name, Earliest, Latest);

    /// <summary>A year that may be left out.</summary>
    internal static int? OptionalYear(QuestionFields fields, string name) => fields.Has(name) ? Year(fields, name) : null;

    private static ImmutableArray<double> Shares(QuestionFields made, int years)
    {
        var given = made.Numbers("shares", NumberRange.NotNegative, [.. Enumerable.Repeat(1.0, years)]);
        var most = given.DefaultIfEmpty(0).Max();
        if (made.IsSoundAt("shares"))
        {
            if (given.Length != years)
                made.Report("shares", "has another number of years than made", "one number for each year from firstYear to lastYear");
            else if (most <= 0)
                made.Report("shares", "has nothing above 0", "one year at least is needed");
        }
        if (!made.IsSoundAt("shares"))
            return [.. Enumerable.Repeat(1.0 / years, years)];
        // By the greatest first, so that a sum of very small or very large shares neither vanishes nor overflows.
        var sum = given.Sum(s => s / most);
        return [.. given.Select(s => s / most / sum)];
    }

    /// <summary>
    /// What a swapped part shows, by the unit's year: the mean over the years that such a part can be of. From another unit of the kind it
    /// is of any year of making, by its chance; else of any year from the unit's own to now, each alike.
    /// </summary>
    /// <param name="ofYear">Chance of what is shown, by the year of the part.</param>
    public double[] WhenSwapped(ReadOnlySpan<double> ofYear)
    {
        var swapped = new double[Chances.Length];
        double donors = 0;
        for (var y = 0; y < swapped.Length; y++)
            donors += Chances[y] * ofYear[y];
        double later = 0;
        for (var z = PartYears - 1; z >= 0; z--)
        {
            later += ofYear[z];
            if (z < swapped.Length)
                swapped[z] = (DonorShare * donors) + ((1 - DonorShare) * later / (PartYears - z));
        }
        return swapped;
    }
}
