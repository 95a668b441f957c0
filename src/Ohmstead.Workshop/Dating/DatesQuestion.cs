using System.Collections.Immutable;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Dating;

/// <summary>What two benches say differently of the years of a type, as a question to a person.</summary>
/// <param name="Key">The thing, never shown.</param>
/// <param name="Question">What is asked.</param>
/// <param name="Answers">What each bench says, the one that counts until then first.</param>
public sealed record DatesQuestion(string Key, string Question, ImmutableArray<DatesAnswer> Answers)
{
    /// <summary>The open questions of a type, in the order of its details.</summary>
    public static ImmutableArray<DatesQuestion> Of(KindDates dates)
    {
        if (dates.Said is null)
            return [];
        var all = DatesClaims.Of(dates);
        var open = ImmutableArray.CreateBuilder<DatesQuestion>();
        if (Apart(all, DatesClaims.Made) is { } made)
            open.Add(Ask(DatesClaims.Made, "Two benches entered different years of making. Which ones are right?", made, MadeWords));
        if (Apart(all, DatesClaims.Donors) is { } donors)
            open.Add(Ask(DatesClaims.Donors, "Of 100 swapped parts, how many came from another unit of this type?", donors, DonorWords));
        foreach (var detail in dates.Details)
            open.AddRange(Of(detail, dates, all));
        return open.ToImmutable();
    }

    private static IEnumerable<DatesQuestion> Of(DateDetail detail, KindDates dates, DatesClaims all)
    {
        var key = DatesClaims.Detail(detail.Id);
        if (all.ByKey[key].Live.Values.Any(c => c.IsGone))
        {
            yield return Gone(detail, all.ByKey[key]);
            // Until it is known whether it stays, its looks are not asked about.
            yield break;
        }
        var asked = $"{detail.Title}: two benches changed it differently. Which one is right?";
        if (Apart(all, key) is { } details)
            yield return Ask(key, asked, details, c => DetailWords(c, dates));
        foreach (var look in detail.Variants)
        {
            var (lookKey, title) = (DatesClaims.Look(detail.Id, look.Id), Sentences.Small(look.Title));
            if (Apart(all, lookKey) is { } looks)
                yield return Ask(lookKey, $"{detail.Title}, {title}: two benches say different things. Which is right?", looks, LookWords);
        }
    }

    /// <summary>Answers it: what is chosen takes the place of all that was said.</summary>
    /// <param name="dates">As they are kept now.</param>
    /// <param name="answer">The answer; where it is no longer asked, nothing changes.</param>
    public KindDates Answer(KindDates dates, DatesAnswer answer)
    {
        var all = DatesClaims.Of(dates);
        if (!all.ByKey.TryGetValue(Key, out var said) || Of(dates).All(q => q.Key != Key))
            return dates;
        // What was pressed was said otherwise meanwhile: the question is read anew.
        if (!said.Live.TryGetValue(answer.Claim, out var chosen))
            return dates;
        var after = all.ByKey.SetItem(Key, said.Say(Key, chosen.Value, answer.IsGone));
        // Its looks go with it; where it stays, those come back that went with it.
        if (Key.Split(':') is ["detail", var id] && (answer.IsGone || said.Live.Values.Any(c => c.IsGone)))
            foreach (var (look, claims) in all.ByKey.Where(c => c.Key.StartsWith($"look:{id}:", StringComparison.Ordinal)))
                if (answer.IsGone || claims.Shown is { IsGone: true })
                    after = after.SetItem(look, claims.Say(look, claims.Shown!.Value, answer.IsGone));
        // What was swapped together with it is swapped alone from now on.
        foreach (var led in dates.Details.Where(d => answer.IsGone && DatesClaims.Detail(d.With) == Key))
        foreach (var (its, alone) in DatesClaims.Values(new(null, null, [SwappedWith.Alone(led, dates.Details) with { Variants = [] }])))
            after = after.SetItem(its, after[its].Say(its, alone, isGone: false));
        return (all with { ByKey = after }).Dates();
    }

    private static ImmutableArray<Claim>? Apart(DatesClaims all, string key) =>
        all.ByKey.TryGetValue(key, out var said) && said.Different is { Length: > 1 } different ? different : null;

    private static DatesQuestion Ask(string key, string question, ImmutableArray<Claim> said, Func<Claim, string> words) =>
        new(key, question, [.. said.Select(c => new DatesAnswer(c.IsGone ? Away(key) : words(c), c.Id, c.IsGone))]);

    private static string Away(string key) => key == DatesClaims.Donors ? DonorWords(KindDates.UsualDonorPercent) : "Take it away";

    private static DatesQuestion Gone(DateDetail detail, Claims said) =>
        new(
            DatesClaims.Detail(detail.Id),
            $"{detail.Title}: one bench took it away, another still uses it. Does it stay?",
            [
                .. said
                    .Different.Where(c => !c.IsGone)
                    .DefaultIfEmpty(said.Shown!)
                    .Select(c => new DatesAnswer($"It stays: {DetailWords(c, null)}", c.Id, false)),
                new("Take it away", said.Live.Values.First(c => c.IsGone).Id, true),
            ]
        );

    private static string MadeWords(Claim claim)
    {
        var made = DatesClaims.Read<MadeSaid>(claim.Value);
        string Year(int? year) => year is { } y ? DatesEdit.Show(y) : "not entered";
        var each = made.Shares is { } shares ? $", with how many each year: {string.Join(", ", shares.Select(ValueText.Plain))}" : "";
        return $"{Year(made.FirstYear)} to {Year(made.LastYear)}{each}";
    }

    private static string DonorWords(Claim claim) => DonorWords(DatesClaims.Read<double>(claim.Value));

    private static string DonorWords(double percent) => $"{ValueText.Plain(percent)} of 100";

    private static string LookWords(Claim claim)
    {
        var look = DatesClaims.Read<DateVariant>(claim.Value);
        return $"{Sentences.Large(look.Title)}: {look.Years}{(look.SoftYears > 0 ? $", give or take {Counted.Of(look.SoftYears, "year")}" : "")}";
    }

    private static string DetailWords(Claim claim, KindDates? dates)
    {
        var detail = DatesClaims.Read<DateDetail>(claim.Value);
        var with = dates?.Details.FirstOrDefault(d => d.Id == detail.With)?.Title;
        return $"{detail.Title}, swapped in {ValueText.Plain(detail.SwappedPercent)} of 100 units{(with is null ? "" : $", together with the {Sentences.Small(with)}")}{(detail.Where.Length > 0 ? $"; look: {detail.Where}" : "")}";
    }
}

/// <summary>An answer to what two benches say differently.</summary>
/// <param name="Words">As a person reads it.</param>
/// <param name="Claim">Mark of what is said, never shown.</param>
/// <param name="IsGone">True where it is taken away.</param>
public sealed record DatesAnswer(string Words, string Claim, bool IsGone);
