using System.Collections.Immutable;
using System.Text.Json;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Dating;

/// <summary>
/// What dates a type, taken apart into single things that are said: years of making, donors' share, each detail, each look. So two
/// benches that entered years apart both keep theirs, and only what they say differently of one thing is a question.
/// </summary>
internal sealed record DatesClaims(string Type, ImmutableSortedDictionary<string, Claims> ByKey)
{
    /// <summary>First and last year of making, and how many in each.</summary>
    public const string Made = "made";

    /// <summary>Share of swapped parts that come from another unit.</summary>
    public const string Donors = "donors";

    private const string More = "more:";

    /// <summary>Key of a detail.</summary>
    public static string Detail(string id) => $"detail:{Uri.EscapeDataString(id)}";

    /// <summary>Key of a look.</summary>
    public static string Look(string detail, string id) => $"look:{Uri.EscapeDataString(detail)}:{Uri.EscapeDataString(id)}";

    /// <summary>Of what is kept. What says otherwise than its own record was changed outside the program: it is said last.</summary>
    public static DatesClaims Of(KindDates dates)
    {
        var values = Values(dates);
        var all = ImmutableSortedDictionary.CreateBuilder<string, Claims>(StringComparer.Ordinal);
        foreach (var record in dates.Said ?? [])
            all[record.Key] = record.Claims;
        foreach (var (key, value) in values)
            if (!all.TryGetValue(key, out var said))
                all[key] = Claims.First(key, value);
            else if (said.Live.Values.All(c => c.Value != value))
                all[key] = said.Say(key, value, isGone: false);
        foreach (var (key, said) in all.ToList())
            if (!values.ContainsKey(key) && said.Shown is { IsGone: false } shown)
                all[key] = said.Say(key, shown.Value, isGone: true);
        return new(dates.Type, all.ToImmutable());
    }

    /// <summary>A change at this bench: what it says otherwise is said instead of what was said; all else stays as it is.</summary>
    /// <returns>The changed one with the record of it.</returns>
    public static KindDates Changed(KindDates now, KindDates changed)
    {
        // An answer says itself what it takes the place of.
        if (!ReferenceEquals(now.Said, changed.Said))
            return changed;
        var (all, were, are) = (Of(now).ByKey.ToBuilder(), Values(now), Values(changed));
        foreach (var (key, value) in are)
            if (!all.TryGetValue(key, out var said))
                all[key] = Claims.First(key, value);
            else if (were.GetValueOrDefault(key) != value)
                all[key] = said.Say(key, value, isGone: false);
        foreach (var (key, value) in were)
            if (!are.ContainsKey(key))
                all[key] = all[key].Say(key, value, isGone: true);
        return changed with { Said = Records(all.ToImmutable()) };
    }

    /// <summary>What both say.</summary>
    public DatesClaims Join(DatesClaims other)
    {
        var all = ByKey.ToBuilder();
        foreach (var (key, said) in other.ByKey)
            all[key] = ByKey.TryGetValue(key, out var mine) ? mine.Join(said) : said;
        return new(string.CompareOrdinal(Type, other.Type) > 0 ? Type : other.Type, all.ToImmutable());
    }

    /// <summary>As it is kept, in an order of its own: usual details first, looks by their years.</summary>
    public KindDates Dates()
    {
        var looks = Shown("look:")
            .Select(c => (Of: c.Key.Split(':')[1], Look: Read<DateVariant>(c.Claim.Value)))
            .ToLookup(c => c.Of, c => c.Look);
        // A look that is there needs its detail, and so does one that is swapped with it, also where one bench took that away.
        var leading = Shown("detail:").Select(c => Detail(Read<DateDetail>(c.Claim.Value).With)).ToHashSet(StringComparer.Ordinal);
        var details = ByKey
            .Where(c => c.Key.StartsWith("detail:", StringComparison.Ordinal) && c.Value.Shown is not null)
            .Select(c => (c.Key, Claim: c.Value.Shown!, Looks: looks[c.Key.Split(':')[1]].ToList()))
            .Where(c => !c.Claim.IsGone || c.Looks.Count > 0 || leading.Contains(c.Key))
            .Select(c =>
                Read<DateDetail>(c.Claim.Value) with
                {
                    Variants =
                    [
                        .. c
                            .Looks.OrderBy(l => l.FirstYear ?? int.MinValue)
                            .ThenBy(l => l.LastYear ?? int.MaxValue)
                            .ThenBy(l => l.Id, StringComparer.Ordinal),
                    ],
                }
            )
            .OrderBy(d => DatesEdit.Usual.Select(u => u.Id).Append(d.Id).ToList().IndexOf(d.Id))
            .ThenBy(d => d.Id, StringComparer.Ordinal);
        var made = Shown(Made).Select(c => Read<MadeSaid>(c.Claim.Value)).FirstOrDefault(new MadeSaid(null, null, null));
        return new(made.FirstYear, made.LastYear, [.. details])
        {
            Type = Type,
            Shares = made.Shares,
            DonorPercent = Shown(Donors).Select(c => Read<double>(c.Claim.Value)).FirstOrDefault(KindDates.UsualDonorPercent),
            AsRead = Shown(More)
                .ToDictionary(
                    c => Uri.UnescapeDataString(c.Key[More.Length..]),
                    c => Read<JsonElement>(c.Claim.Value),
                    StringComparer.Ordinal
                ),
            Said = Records(ByKey),
        };
    }

    /// <summary>Each thing that is said, as one line of JSON with its fields in one order.</summary>
    public static ImmutableSortedDictionary<string, string> Values(KindDates dates)
    {
        var all = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        if (dates.FirstYear is not null || dates.LastYear is not null)
            all[Made] = Write(new MadeSaid(dates.FirstYear, dates.LastYear, dates.Shares));
        if (!dates.DonorPercent.Equals(KindDates.UsualDonorPercent))
            all[Donors] = Write(dates.DonorPercent);
        foreach (var (name, value) in dates.AsRead)
            all[More + Uri.EscapeDataString(name)] = Write(value);
        foreach (var detail in dates.Details)
        {
            all[Detail(detail.Id)] = Write(detail with { Variants = [], AsRead = Sorted(detail.AsRead) });
            foreach (var look in detail.Variants)
                all[Look(detail.Id, look.Id)] = Write(look with { AsRead = Sorted(look.AsRead) });
        }
        return all.ToImmutable();
    }

    /// <summary>Of one value.</summary>
    public static T Read<T>(string value) => JsonSerializer.Deserialize<T>(value, FactText.Options)!;

    /// <summary>As one line.</summary>
    public static string Write<T>(T value) => JsonSerializer.Serialize(value, FactText.Options);

    private IEnumerable<(string Key, Claim Claim)> Shown(string begins) =>
        ByKey
            .Where(c => c.Key.StartsWith(begins, StringComparison.Ordinal) && c.Value.Shown is { IsGone: false })
            .Select(c => (c.Key, c.Value.Shown!));

    /// <summary>What was said once and never changed needs no record: it stands in the text itself.</summary>
    private static List<SaidOf>? Records(ImmutableSortedDictionary<string, Claims> all)
    {
        var said = all.Where(c => c.Value.Over.Count > 0 || c.Value.Live.Count > 1).Select(c => SaidOf.Of(c.Key, c.Value)).ToList();
        return said.Count > 0 ? said : null;
    }

    private static Dictionary<string, JsonElement> Sorted(IDictionary<string, JsonElement> fields) =>
        fields.OrderBy(f => f.Key, StringComparer.Ordinal).ToDictionary(f => f.Key, f => f.Value, StringComparer.Ordinal);
}

/// <summary>Years of making, as one thing that is said.</summary>
internal sealed record MadeSaid(int? FirstYear, int? LastYear, ImmutableArray<double>? Shares);
