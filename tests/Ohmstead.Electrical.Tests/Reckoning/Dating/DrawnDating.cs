using System.Globalization;
using System.Text.Json;
using CsCheck;

namespace Ohmstead.Electrical.Tests.Reckoning.Dating;

/// <summary>
/// A question of dating, and every way in which a unit can have come to look as it does: its year, for each detail or group whether it was
/// swapped, whether from a donor, and from which year the part is. Shares no code with the core.
/// </summary>
internal sealed record DrawnDating(int First, double[] Shares, int Now, double DonorPercent, DrawnDetail[] Details)
{
    public const string Another = "another";

    public int Last => First + Shares.Length - 1;

    /// <summary>The question's fields.</summary>
    public string Fields(double rangePercent = 90) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $$"""
            "question": "dating", "made": { "firstYear": {{First}}, "lastYear": {{Last}}, "shares": {{JsonSerializer.Serialize(
                Shares
            )}} }, "nowYear": {{Now}},
            "donorPercent": {{DonorPercent}}, "rangePercent": {{rangePercent}}, "details": [ {{string.Join(
                ", ",
                Details.Select((d, n) => d.Json(n))
            )}} ]
            """
        );

    /// <summary>Chance of each year with all that is seen, and with each detail swapped besides: by year, then by detail; the last of a row is of the year alone.</summary>
    public double[][] Enumerated()
    {
        var sums = Enumerable.Range(0, Shares.Length).Select(_ => new double[Details.Length + 1]).ToArray();
        for (var y = 0; y < Shares.Length; y++)
            Walk(First + y, 0, Shares[y] / Shares.Sum(), new int?[Details.Length], sums[y]);
        return sums;
    }

    /// <summary>Chance that a swapped part of a detail shows a variant, by the unit's year: every year that the part can be of, counted out.</summary>
    public double Replaced(int detail, int variant, int year)
    {
        var sum = 0.0;
        for (var donor = First; donor <= Last; donor++)
            sum += DonorPercent / 100 * Shares[donor - First] / Shares.Sum() * Details[detail].Shows(variant, donor);
        for (var later = year; later <= Now; later++)
            sum += (1 - (DonorPercent / 100)) / (Now - year + 1) * Details[detail].Shows(variant, later);
        return sum;
    }

    /// <summary>Goes through the details; <paramref name="partYears"/> holds the year of each swapped part, null for what is original.</summary>
    private void Walk(int year, int at, double chance, int?[] partYears, double[] sums)
    {
        if (chance == 0)
            return;
        if (at == Details.Length)
        {
            for (var d = 0; d < Details.Length; d++)
                chance *= Details[d].Seen is { } seen ? Details[d].Shows(seen, partYears[d] ?? year) : 1;
            sums[^1] += chance;
            for (var d = 0; d < Details.Length; d++)
                sums[d] += partYears[d] is null ? 0 : chance;
            return;
        }
        var leader = Details[at].With;
        if (leader is { } with && partYears[with] is { } came)
        {
            // It came with the other, in the same swap.
            Walk(year, at + 1, chance, Put(partYears, at, came), sums);
            return;
        }
        var swapped = Details[at].SwappedPercent / 100;
        Walk(year, at + 1, chance * (1 - swapped), Put(partYears, at, null), sums);
        for (var donor = First; donor <= Last; donor++)
            Walk(
                year,
                at + 1,
                chance * swapped * DonorPercent / 100 * Shares[donor - First] / Shares.Sum(),
                Put(partYears, at, donor),
                sums
            );
        for (var later = year; later <= Now; later++)
            Walk(year, at + 1, chance * swapped * (1 - (DonorPercent / 100)) / (Now - year + 1), Put(partYears, at, later), sums);
    }

    private static int?[] Put(int?[] years, int at, int? year)
    {
        var put = (int?[])years.Clone();
        put[at] = year;
        return put;
    }

    /// <summary>Any of some numbers.</summary>
    public static Gen<double> OneOf(params double[] numbers) => Gen.Int[0, numbers.Length - 1].Select(n => numbers[n]);

    /// <summary>A name of a letter and a number.</summary>
    public static string Name(string letter, int number) => letter + number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Small ones: up to five years of making, three details of up to three variants; one may come with the first.</summary>
    public static Gen<DrawnDating> Any { get; } =
        from years in Gen.Int[1, 5]
        from shares in Gen.Int[0, 4].Array[years].Where(s => s.Sum() > 0)
        from later in Gen.Int[0, 4]
        from donors in OneOf(0, 20, 55.5, 100)
        from details in DrawnDetail.Any.Array[1, 3]
        from isTogether in Gen.Bool
        select new DrawnDating(
            1950,
            [.. shares.Select(s => (double)s)],
            1950 + years - 1 + later,
            donors,
            [.. details.Select((d, n) => n > 0 && isTogether ? d with { With = 0 } : d)]
        );
}

/// <summary>A detail of it.</summary>
/// <param name="With">The place of the one that it is swapped with.</param>
/// <param name="Seen">A variant's place, or one more for another; null for nothing.</param>
internal sealed record DrawnDetail(double SwappedPercent, DrawnVariant[] Variants, int? Seen, int? With = null)
{
    public static Gen<DrawnDetail> Any { get; } =
        from swapped in DrawnDating.OneOf(0, 3, 40, 71.25, 100)
        from variants in DrawnVariant.Any.Array[1, 3]
        from seen in Gen.Int[-1, variants.Length]
        select new DrawnDetail(swapped, variants, seen < 0 ? null : seen);

    /// <summary>Chance that a part of a year, as it was made, shows this variant.</summary>
    public double Shows(int variant, int year)
    {
        var sum = 0.0;
        foreach (var v in Variants)
            sum += v.Height(year);
        return variant == Variants.Length ? (sum < 1 - 1e-12 ? 1 - sum : 0)
            : sum > 1 ? Variants[variant].Height(year) / sum
            : Variants[variant].Height(year);
    }

    public string Json(int place)
    {
        object Variant(DrawnVariant v, int n) =>
            new
            {
                id = DrawnDating.Name("v", n),
                firstYear = v.First,
                lastYear = v.Last,
                softYears = v.Soft,
            };
        return JsonSerializer.Serialize(
            new
            {
                id = DrawnDating.Name("d", place),
                swappedPercent = SwappedPercent,
                with = With is { } with ? DrawnDating.Name("d", with) : null,
                variants = Variants.Select(Variant),
                seen = Seen is not { } seen ? null
                : seen == Variants.Length ? DrawnDating.Another
                : DrawnDating.Name("v", seen),
            }
        );
    }
}

/// <summary>A variant of it; null for an open end.</summary>
internal sealed record DrawnVariant(int? First, int? Last, int Soft)
{
    public static Gen<DrawnVariant> Any { get; } =
        from first in Gen.Int[1947, 1957]
        from length in Gen.Int[0, 5]
        from soft in Gen.Int[0, 3]
        from open in Gen.Int[0, 5]
        select new DrawnVariant(open == 0 ? null : first, open == 1 ? null : first + length, soft);

    /// <summary>Counted up step by step: each year beyond an end takes one of soft + 1 steps away.</summary>
    public double Height(int year)
    {
        var steps = Soft + 1;
        for (var y = year; y < (First ?? int.MinValue) && steps > 0; y++)
            steps--;
        for (var y = year; y > (Last ?? int.MaxValue) && steps > 0; y--)
            steps--;
        return (double)steps / (Soft + 1);
    }
}
