using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Dating;

/// <summary>A detail of a kind: what it can look like, when, and how often it is swapped.</summary>
/// <param name="Title">What it is called; its id where nothing else is said.</param>
/// <param name="SwappedShare">Chance that it was swapped since, alone [0..1].</param>
/// <param name="With">Place of the detail that it is swapped together with; its own where it is with none.</param>
/// <param name="Seen">Place of the variant that the unit shows, the number of variants for another one; null for what was not looked at or says nothing.</param>
/// <param name="IsAsked">True where it was looked at, whatever came of it.</param>
internal sealed record DatedDetail(
    string Id,
    string Title,
    double SwappedShare,
    int With,
    ImmutableArray<DetailVariant> Variants,
    int? Seen,
    bool IsAsked
)
{
    /// <summary>Said of a detail that shows none of its variants.</summary>
    public const string Another = "another";

    /// <summary>Said of a detail that was looked at and says nothing.</summary>
    public const string CannotTell = "cannot tell";

    private const int MostVariants = 40;

    /// <summary>Weights that should add up to 1 may miss by so much.</summary>
    private const double Rounding = 1e-12;

    /// <summary>Reads one detail; <see cref="With"/> is resolved once all are known.</summary>
    public static DatedDetail Read(QuestionFields fields, int place, ISet<string> taken)
    {
        var id = fields.NewId("id", taken);
        var names = new HashSet<string>(StringComparer.Ordinal) { Another, CannotTell };
        var variants = fields.List("variants", f => DetailVariant.Read(f, names), most: MostVariants);
        var seen = fields.Has("seen")
            ? fields.KnownId("seen", [.. variants.Select(v => v.Id), Another, CannotTell], "variant of this detail")
            : "";
        var at = variants.Select(v => v.Id).ToList().IndexOf(seen);
        // What comes with another detail is rarely swapped a second time, alone.
        var swapped = fields.Has("with")
            ? fields.Number("swappedPercent", NumberRange.Percent, 0)
            : fields.Number("swappedPercent", NumberRange.Percent);
        return new(
            id,
            fields.Word("title", id),
            swapped / 100,
            place,
            variants,
            seen == Another ? variants.Length
                : at >= 0 ? at
                : null,
            seen.Length > 0
        );
    }

    /// <summary>
    /// Chance of each variant, and last of another one, on a part of a year as it was made. Where variants run side by side they share
    /// the year by their weights; where they leave a gap, or taper off, the rest is another variant than those named.
    /// </summary>
    /// <returns>By variant, then by year from the first of making to now.</returns>
    public double[][] WhenNew(MadeYears made)
    {
        var chances = new double[Variants.Length + 1][];
        for (var v = 0; v < chances.Length; v++)
            chances[v] = new double[made.PartYears];
        for (var z = 0; z < made.PartYears; z++)
        {
            var sum = Variants.Sum(v => v.Weight(made.First + z));
            for (var v = 0; v < Variants.Length; v++)
                chances[v][z] = Variants[v].Weight(made.First + z) / Math.Max(1, sum);
            chances[Variants.Length][z] = 1 - sum < Rounding ? 0 : 1 - sum;
        }
        return chances;
    }
}

/// <summary>One way in which a detail looks, and the years of it.</summary>
/// <param name="First">First year; null: as long as the kind was made.</param>
/// <param name="Last">Last year; null: until now.</param>
/// <param name="SoftYears">How many years beyond either end it is still possible, less and less.</param>
internal sealed record DetailVariant(string Id, string Title, int? First, int? Last, int SoftYears)
{
    private const int MostSoftYears = 50;

    /// <summary>Parts lie on the shelf over the New Year. Common practice, no source; editable.</summary>
    private const int UsualSoftYears = 1;

    /// <summary>Reads one variant.</summary>
    public static DetailVariant Read(QuestionFields fields, ISet<string> taken)
    {
        var id = fields.NewId("id", taken);
        var (first, last) = (MadeYears.OptionalYear(fields, "firstYear"), MadeYears.OptionalYear(fields, "lastYear"));
        if (last < first && fields.IsSoundAt("firstYear") && fields.IsSoundAt("lastYear"))
            fields.Report("lastYear", "is before firstYear", "the last year of this variant is expected");
        return new(id, fields.Word("title", id), first, last, fields.Whole("softYears", 0, MostSoftYears, UsualSoftYears));
    }

    /// <summary>
    /// A trapezoid: 1 from the first year to the last; k years beyond either end 1 − k/(<see cref="SoftYears"/> + 1), and 0 once that is
    /// less. With 2 soft years: two thirds, one third, nothing.
    /// </summary>
    public double Weight(int year)
    {
        var beyond = Math.Max(First is { } first ? first - year : 0, Last is { } last ? year - last : 0);
        return Math.Clamp(1 - (Math.Max(0, beyond) / (SoftYears + 1.0)), 0, 1);
    }
}
