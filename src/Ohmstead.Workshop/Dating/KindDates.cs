using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Dating;

/// <summary>
/// What dates the units of a type: its years of making, and the details that changed in them. It lies beside the type sheet, under the
/// same id: no number of the circuit depends on it, so another year makes no new version of the sheet.
/// </summary>
/// <param name="FirstYear">First year of making; null where it is not entered yet.</param>
/// <param name="LastYear">Last year of making.</param>
/// <param name="Details">The details, in the order in which they are asked.</param>
public sealed record KindDates(int? FirstYear, int? LastYear, ImmutableArray<DateDetail> Details)
{
    /// <summary>Kind of the document that holds them; its id is the sheet's.</summary>
    public const string DocumentKind = "dating";

    /// <summary>The mark of the format, in the field <c>ohmstead</c>.</summary>
    public const string Mark = "dating/1";

    /// <summary>Of swapped parts, how many come from another unit of the type [percent]. Common practice, no source.</summary>
    public const double UsualDonorPercent = 20;

    /// <summary>None entered.</summary>
    public static KindDates None { get; } = new(null, null, []);

    /// <summary>The mark.</summary>
    public string Ohmstead { get; init; } = Mark;

    /// <summary>Id of the type sheet that it is of, in a file of its own; empty where it lies beside its sheet.</summary>
    public string Type { get; init; } = "";

    /// <summary>How many were made in each year from the first to the last, in any measure; null: each year alike.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ImmutableArray<double>? Shares { get; init; }

    /// <inheritdoc cref="UsualDonorPercent"/>
    public double DonorPercent { get; init; } = UsualDonorPercent;

    /// <summary>What took the place of what, for a merge; null where nothing was ever changed.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<SaidOf>? Said { get; init; }

    /// <summary>Fields of a later version, as they were read.</summary>
    [JsonExtensionData]
    public IDictionary<string, JsonElement> AsRead { get; init; } = new Dictionary<string, JsonElement>(StringComparer.Ordinal);

    /// <summary>True where a unit can be dated: years of making, and a detail with a variant.</summary>
    [JsonIgnore]
    public bool CanDate => FirstYear is not null && LastYear is not null && Details.Any(d => !d.Variants.IsEmpty);

    /// <summary>As it is kept.</summary>
    public static string Write(KindDates dates) => JsonSerializer.Serialize(dates, Indented);

    /// <summary>From what was kept; null where it cannot be read.</summary>
    public static KindDates? Read(string text) => KindDatesRead.Of(text).Dates;

    /// <summary>
    /// What came in with a file, put beside what is here: what is here stays as it is, what it lacks is added. Under one key two titles
    /// are two details, or two looks: both are kept, the one that came under a key of its own.
    /// </summary>
    public KindDates With(KindDates came)
    {
        var theirs = came.Details.ToDictionary(d => d.Id, d => IdHere(d.Id, d.Title, id => TitleOf(Details, id)), StringComparer.Ordinal);
        ImmutableArray<DateDetail> renamed =
        [
            .. came.Details.Select(d => d with { Id = theirs[d.Id], With = theirs.GetValueOrDefault(d.With, d.With) }),
        ];
        DateDetail Both(DateDetail mine) => renamed.FirstOrDefault(d => d.Id == mine.Id) is { } other ? mine.WithLooks(other) : mine;
        var added = renamed.Where(d => Details.All(m => m.Id != d.Id)).DistinctBy(d => d.Id, StringComparer.Ordinal).ToList();
        var ids = Details.Concat(added).Where(d => d.With.Length == 0).Select(d => d.Id).ToHashSet(StringComparer.Ordinal);
        return this with
        {
            FirstYear = FirstYear ?? came.FirstYear,
            LastYear = FirstYear is null ? came.LastYear : LastYear,
            Shares = FirstYear is null ? came.Shares : Shares,
            DonorPercent = FirstYear is null ? came.DonorPercent : DonorPercent,
            Details = [.. Details.Select(Both), .. added.Select(d => ids.Contains(d.With) ? d : SwappedWith.Alone(d, renamed))],
        };
    }

    /// <summary>
    /// What two benches say that worked apart: all details, looks and years of both. What one of them changed is changed; what both changed
    /// to something else is shown by one of them, and is a question (<see cref="DatesQuestion"/>).
    /// </summary>
    public KindDates Join(KindDates other) => DatesClaims.Of(this).Join(DatesClaims.Of(other)).Dates();

    /// <summary>The same, changed at this bench: with the record of what it took the place of.</summary>
    public KindDates ChangedTo(KindDates changed) => DatesClaims.Changed(this, changed);

    private static string? TitleOf(ImmutableArray<DateDetail> details, string id) => details.FirstOrDefault(d => d.Id == id)?.Title;

    /// <summary>The same key where it is free or means the same here; else one that the title marks, so that a second time finds it again.</summary>
    internal static string IdHere(string id, string title, Func<string, string?> here) =>
        here(id) is { } mine && !TitleKey.IsSame(mine, title) ? TitleKey.Marked(id, title) : id;

    private static readonly JsonSerializerOptions Indented = new(FactText.Options) { WriteIndented = true };
}

/// <summary>A detail of a type that changed with the years.</summary>
/// <param name="Id">Its key, which entries of units hold.</param>
/// <param name="Title">What it is called: "Cord".</param>
/// <param name="Where">Where to look, in words; empty for none.</param>
/// <param name="SwappedPercent">Of a hundred units, how many have another one by now [percent].</param>
/// <param name="With">Key of the detail that it is swapped together with; empty for none.</param>
/// <param name="Variants">What it can look like.</param>
public sealed record DateDetail(
    string Id,
    string Title,
    string Where,
    double SwappedPercent = double.NaN,
    string With = "",
    ImmutableArray<DateVariant> Variants = default
)
{
    /// <summary>With the looks of another bench that it lacks.</summary>
    internal DateDetail WithLooks(DateDetail came)
    {
        string? Here(string id) => Variants.FirstOrDefault(v => v.Id == id)?.Title;
        var renamed = came.Variants.Select(v => v with { Id = KindDates.IdHere(v.Id, v.Title, Here) });
        return this with
        {
            Variants = [.. Variants, .. renamed.Where(v => Here(v.Id) is null).DistinctBy(v => v.Id, StringComparer.Ordinal)],
        };
    }

    /// <summary>Fields of a later version, as they were read.</summary>
    [JsonExtensionData]
    public IDictionary<string, JsonElement> AsRead { get; init; } = new Dictionary<string, JsonElement>(StringComparer.Ordinal);
}

/// <summary>One way in which a detail looks, and the years of it.</summary>
/// <param name="Id">Its key within the detail.</param>
/// <param name="Title">What it looks like: "cloth over rubber".</param>
/// <param name="FirstYear">First year; null: from the beginning.</param>
/// <param name="LastYear">Last year; null: until now.</param>
/// <param name="SoftYears">How many years before and after it is still possible, less and less: with 2 two thirds as likely, one third, not.</param>
public sealed record DateVariant(string Id, string Title, int? FirstYear, int? LastYear, int SoftYears = DateVariant.UsualSoftYears)
{
    /// <summary>Parts lie on the shelf over the New Year. Common practice, no source.</summary>
    public const int UsualSoftYears = 1;

    /// <summary>Fields of a later version, as they were read.</summary>
    [JsonExtensionData]
    public IDictionary<string, JsonElement> AsRead { get; init; } = new Dictionary<string, JsonElement>(StringComparer.Ordinal);

    /// <summary>Its years in words: "1946 to 1951", "from 1952", "until 1951", "all years".</summary>
    [JsonIgnore]
    public string Years =>
        (FirstYear, LastYear) switch
        {
            ({ } first, { } last) => first == last ? DatesEdit.Show(first) : $"{DatesEdit.Show(first)} to {DatesEdit.Show(last)}",
            ({ } first, null) => $"from {DatesEdit.Show(first)}",
            (null, { } last) => $"until {DatesEdit.Show(last)}",
            _ => "all years",
        };
}
