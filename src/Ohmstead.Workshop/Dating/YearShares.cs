using System.Collections.Immutable;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Dating;

/// <summary>How many were made in each year, as typed, a field for each year.</summary>
public static class YearShares
{
    /// <summary>Any measure will do; beyond this it is a slip of the pen.</summary>
    private const double Most = 10_000_000;

    /// <summary>As it stands in the fields: one for each year from the first to the last, empty where nothing was entered.</summary>
    public static ImmutableSortedDictionary<int, string> Shown(KindDates dates) =>
        dates is { FirstYear: { } first, LastYear: { } last } && last >= first && last - first < DatesEdit.MostYears
            ? Enumerable
                .Range(first, last - first + 1)
                .ToImmutableSortedDictionary(y => y, y => Fits(dates) ? ValueText.Plain(dates.Shares!.Value[y - first]) : "")
            : ImmutableSortedDictionary<int, string>.Empty;

    /// <summary>What was typed, for the years that count now.</summary>
    /// <param name="dates">As they are kept now.</param>
    /// <param name="shown">What the form was filled from; where nothing was typed over it, what is kept now stays.</param>
    /// <param name="years">The first and the last year that count from now on.</param>
    internal static (ImmutableArray<double>? Shares, string Wrong) Read(
        KindDates dates,
        KindDates shown,
        (int First, int Last) years,
        ImmutableSortedDictionary<int, string> typed
    )
    {
        if (typed.Count == 0 || typed.SequenceEqual(Shown(shown)))
        {
            // What was not typed stays to its last digit.
            if (dates.FirstYear == years.First && dates.LastYear == years.Last)
                return (Fits(dates) ? dates.Shares : null, "");
            typed = Shown(dates);
        }
        if (typed.Values.All(t => t.Trim().Length == 0))
            return (null, "");
        var read = new Dictionary<int, double>();
        foreach (var (year, text) in typed.Where(t => t.Key >= years.First && t.Key <= years.Last))
        {
            if (text.Trim().Length == 0)
                return (null, $"{DatesEdit.Show(year)}: how many? Enter a number for every year, or leave them all empty.");
            var (many, wrong) = ShopEdit.Number(text, 0, Most);
            if (wrong.Length > 0)
                return (null, $"{DatesEdit.Show(year)}: {wrong}");
            read[year] = many;
        }
        // None of the years that count now had a field: they are alike until they are entered.
        if (read.Count == 0)
            return (null, "");
        if (read.Values.All(m => m <= 0))
            return (null, "In one year at least there must be more than 0.");
        // A year that has no field yet counts as one like the others, until its number is entered.
        var usual = read.Values.Average();
        return ([.. Enumerable.Range(years.First, years.Last - years.First + 1).Select(y => read.GetValueOrDefault(y, usual))], "");
    }

    private static bool Fits(KindDates dates) => dates.Shares is { } shares && shares.Length == dates.LastYear - dates.FirstYear + 1;
}
