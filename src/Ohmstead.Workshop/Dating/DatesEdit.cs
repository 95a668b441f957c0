using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Dating;

/// <summary>Changes of what dates a type, each from what was typed. What was entered on units stays, whatever is changed here.</summary>
public static class DatesEdit
{
    private const int Earliest = 1800;

    private const int Latest = 2200;

    internal const int MostYears = 200;

    private const int MostSoftYears = 50;

    private const int MostWords = 120;

    private const string NoDetail = "This detail is no longer there.";

    /// <summary>As many as the question takes.</summary>
    internal const int MostOfEach = 40;

    /// <summary>Details that most types have, to begin with. Chances of a swap are common practice, no source.</summary>
    public static ImmutableArray<DateDetail> Usual { get; } =
    [
        new("cord", "Cord", "along the cord, plug to case", 60, "", []),
        new("plug", "Plug", "the plug in your hand, cord pulled out of the wall", 15, "cord", []),
        new("vents", "Vents", "the openings of the case", 3, "", []),
        new("screws", "Screw heads", "under the case and on the cover", 15, "", []),
        new("post-nuts", "Post nuts", "on the posts", 35, "", []),
        new("wire-cover", "Wire cover", "the wires behind the posts, with the cover off", 10, "", []),
        new("disc", "Whistle disc", "inside, with the cover off", 25, "", []),
        new("plate", "Plate wording", "the rating plate: volts, cycles, patents", 2, "", []),
    ];

    /// <summary>A year as it stands in a field.</summary>
    public static string Show(int year) => year.ToString(CultureInfo.InvariantCulture);

    /// <summary>The years of making, and the share of donors' parts. What was left as it was shown stays as it is now.</summary>
    /// <param name="shown">What the form was filled from; another window may have changed it since.</param>
    /// <param name="each">How many in each year, as typed (<see cref="YearShares"/>).</param>
    public static DatesEdited Made(
        KindDates dates,
        KindDates shown,
        string first,
        string last,
        string donors,
        ImmutableSortedDictionary<int, string> each
    )
    {
        var ((from, fromWrong), (to, toWrong)) = (Year(first, mustBe: true), Year(last, mustBe: true));
        var (percent, percentWrong) = ShopEdit.Number(donors, 0, 100);
        if (fromWrong.Length == 0 && from == shown.FirstYear)
            from = dates.FirstYear;
        if (toWrong.Length == 0 && to == shown.LastYear)
            to = dates.LastYear;
        if (percentWrong.Length == 0 && percent.Equals(shown.DonorPercent))
            percent = dates.DonorPercent;
        var wrong =
            fromWrong.Length > 0 ? $"First year: {fromWrong}"
            : toWrong.Length > 0 ? $"Last year: {toWrong}"
            : to < from ? "The last year is before the first."
            : to - from >= MostYears ? $"At most {Show(MostYears)} years."
            : percentWrong.Length > 0 ? $"Parts of other units: {percentWrong}"
            : "";
        if (wrong.Length > 0)
            return new(null, wrong);
        var (shares, shareWrong) = YearShares.Read(dates, shown, (from!.Value, to!.Value), each);
        return shareWrong.Length > 0
            ? new(null, shareWrong)
            : new(dates with { FirstYear = from, LastYear = to, DonorPercent = percent, Shares = shares }, "");
    }

    /// <summary>Adds a detail, under its key where that is free; what it comes with is kept only where that is there.</summary>
    public static DatesEdited Add(KindDates dates, DateDetail detail)
    {
        if (dates.Details.Length >= MostOfEach)
            return new(null, $"At most {Show(MostOfEach)} details.");
        var ids = dates.Details.Select(d => d.Id).ToList();
        var id = detail.Id.Length > 0 && !ids.Contains(detail.Id) ? detail.Id : Key(detail.Title, ids);
        var with = dates.Details.Any(d => d.Id == detail.With && d.With.Length == 0) ? detail.With : "";
        var put = with.Length > 0 ? detail : SwappedWith.Alone(detail, Usual);
        var added = dates with
        {
            Details = dates.Details.Select(d => SwappedWith.Led(d, id, dates)).Append(put with { Id = id, With = "" }).ToImmutableArray(),
        };
        return Put(added, id, put.Title, put.Where, Percent(put), with);
    }

    private static string Percent(DateDetail detail) => detail.SwappedPercent.ToString(CultureInfo.InvariantCulture);

    /// <summary>Changes a detail.</summary>
    public static DatesEdited Put(KindDates dates, string id, string title, string where, string swapped, string with)
    {
        var (percent, percentWrong) = ShopEdit.Number(swapped, 0, 100);
        var other = dates.Details.FirstOrDefault(d => d.Id == with);
        if (dates.Details.All(d => d.Id != id))
            return new(null, NoDetail);
        var wrong =
            Named(title) is { Length: > 0 } unnamed ? unnamed
            : where.Trim().Length > MostWords ? $"Where to look: at most {Show(MostWords)} letters."
            : percentWrong.Length > 0 ? $"Swapped: {percentWrong}"
            : with.Length > 0 && (other is null || with == id || other.With.Length > 0)
                ? "It can be swapped with a detail that itself goes with no other."
            : with.Length > 0 && dates.Details.Any(d => d.With == id) ? "Another detail goes with this one, so it cannot go with a third."
            : "";
        return wrong.Length > 0
            ? new(null, wrong)
            : new(
                Changed(dates, id, d => d with { Title = title.Trim(), Where = where.Trim(), SwappedPercent = percent, With = with }),
                ""
            );
    }

    /// <summary>Takes a detail away; those that went with it go alone, as often as they were swapped with it or without.</summary>
    public static KindDates Without(KindDates dates, string id) =>
        dates with
        {
            Details = [.. dates.Details.Where(d => d.Id != id).Select(d => d.With == id ? SwappedWith.Alone(d, dates.Details) : d)],
        };

    /// <summary>Puts back a detail that was taken away, where it was; what went with it goes with it again, if nobody changed it since.</summary>
    /// <param name="before">As it was before the detail was taken away.</param>
    public static DatesEdited PutBack(KindDates dates, KindDates before, string id)
    {
        if (before.Details.FirstOrDefault(d => d.Id == id) is not { } back || dates.Details.Any(d => d.Id == id))
            return new(dates, "");
        if (dates.Details.Length >= MostOfEach)
            return new(null, $"At most {Show(MostOfEach)} details.");
        var leads = dates.Details.Any(d => d.Id == back.With && d.With.Length == 0);
        var at = Math.Min(before.Details.IndexOf(back), dates.Details.Length);
        var all = dates.Details.Select(d => SwappedWith.Again(d, id, before, dates)).ToImmutableArray();
        return new(dates with { Details = all.Insert(at, leads ? back : SwappedWith.Alone(back, before.Details)) }, "");
    }

    /// <summary>Adds a variant, or changes the one with this key.</summary>
    /// <param name="variant">Its key; empty for a new one.</param>
    public static DatesEdited PutVariant(KindDates dates, string detail, string variant, TypedVariant typed)
    {
        if (dates.Details.FirstOrDefault(d => d.Id == detail) is not { } of)
            return new(null, NoDetail);
        if (variant.Length > 0 && of.Variants.All(v => v.Id != variant))
            return new(null, "This look is no longer there.");
        var (read, wrong) = Read(typed);
        if (wrong.Length == 0 && variant.Length == 0 && of.Variants.Length >= MostOfEach)
            wrong = $"At most {Show(MostOfEach)} of them.";
        if (wrong.Length > 0)
            return new(null, wrong);
        DateVariant Now(DateVariant was) =>
            was with
            {
                Title = read.Title,
                FirstYear = read.FirstYear,
                LastYear = read.LastYear,
                SoftYears = read.SoftYears,
            };
        ImmutableArray<DateVariant> variants =
            variant.Length == 0
                ? of.Variants.Add(read with { Id = Key(read.Title, of.Variants.Select(v => v.Id)) })
                : [.. of.Variants.Select(v => v.Id == variant ? Now(v) : v)];
        return new(Changed(dates, detail, d => d with { Variants = variants }), "");
    }

    private static (DateVariant Read, string Wrong) Read(TypedVariant typed)
    {
        var ((from, fromWrong), (to, toWrong)) = (Year(typed.First, mustBe: false), Year(typed.Last, mustBe: false));
        var (years, softWrong) = ShopEdit.Number(typed.Soft, 0, MostSoftYears);
        return (
            new("", typed.Title.Trim(), from, to, (int)years),
            Named(typed.Title) is { Length: > 0 } unnamed ? unnamed
            : fromWrong.Length > 0 ? $"First year: {fromWrong}"
            : toWrong.Length > 0 ? $"Last year: {toWrong}"
            : to < from ? "The last year is before the first."
            : softWrong.Length > 0 ? $"Give or take: {softWrong}"
            : years != Math.Floor(years) ? "Give or take: a whole number of years."
            : ""
        );
    }

    /// <summary>Takes a variant away.</summary>
    public static KindDates WithoutVariant(KindDates dates, string detail, string variant) =>
        Changed(dates, detail, d => d with { Variants = [.. d.Variants.Where(v => v.Id != variant)] });

    /// <summary>Puts back a look that was taken away, where it was.</summary>
    /// <param name="before">As it was before.</param>
    public static DatesEdited PutVariantBack(KindDates dates, KindDates before, string detail, string variant)
    {
        if (dates.Details.FirstOrDefault(d => d.Id == detail) is not { } of)
            return new(null, NoDetail);
        var had = before.Details.FirstOrDefault(d => d.Id == detail)?.Variants ?? [];
        if (had.FirstOrDefault(v => v.Id == variant) is not { } back || of.Variants.Any(v => v.Id == variant))
            return new(dates, "");
        if (of.Variants.Length >= MostOfEach)
            return new(null, $"At most {Show(MostOfEach)} of them.");
        var at = Math.Min(had.IndexOf(back), of.Variants.Length);
        return new(Changed(dates, detail, d => d with { Variants = d.Variants.Insert(at, back) }), "");
    }

    private static KindDates Changed(KindDates dates, string id, Func<DateDetail, DateDetail> change) =>
        dates with
        {
            Details = [.. dates.Details.Select(d => d.Id == id ? change(d) : d)],
        };

    private static string Named(string title) =>
        title.Trim().Length == 0 ? "It needs a name."
        : title.Trim().Length > MostWords ? $"The name: at most {Show(MostWords)} letters."
        : "";

    private static (int? Year, string Wrong) Year(string typed, bool mustBe)
    {
        if (typed.Trim().Length == 0)
            return (null, mustBe ? "enter a year." : "");
        var (year, wrong) = ShopEdit.Number(typed, Earliest, Latest);
        return wrong.Length > 0 ? (null, wrong)
            : year != Math.Floor(year) ? (null, "a whole year.")
            : ((int)year, "");
    }

    private static string Key(string title, IEnumerable<string> taken)
    {
        var ids = taken.Append(Journal.DetailSeen.Another).ToHashSet(StringComparer.Ordinal);
        var plain = TitleKey.Of(title);
        return ids.Contains(plain) ? Kinds.KindText.FreeId(plain, ids) : plain;
    }
}

/// <summary>One way in which a detail looks, as it was typed.</summary>
/// <param name="First">First year; empty for the beginning.</param>
/// <param name="Last">Last year; empty for now.</param>
/// <param name="Soft">Years, give or take.</param>
public sealed record TypedVariant(string Title, string First, string Last, string Soft);

/// <summary>What a change made, or why it was refused.</summary>
/// <param name="Dates">The changed one; null where it was refused.</param>
public sealed record DatesEdited(KindDates? Dates, string Problem);
