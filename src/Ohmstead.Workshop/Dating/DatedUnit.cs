using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Electrical.Reckoning.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Dating;

/// <summary>When a unit was made, by what was seen of it: the question <c>dating</c>, filled in from its type and its journal.</summary>
/// <param name="Details">Each detail of the type, and what was last said of it.</param>
/// <param name="Answer">The answer; null where the type has no years yet, or nothing fits.</param>
/// <param name="Problem">Why there is no answer; empty where there is one.</param>
/// <param name="Question">The question as a file: <c>ohmstead reckon</c> answers the same; empty where there is none.</param>
public sealed record DatedUnit(ImmutableArray<DatedLine> Details, DatingAnswer? Answer, string Problem, string Question)
{
    private static readonly JsonSerializerOptions Indented = new(FactText.Options) { WriteIndented = true };

    /// <summary>Said where what was seen leaves no year.</summary>
    public const string NoYear =
        "These do not go together: no year is left. Look again. Or say at the type that one of them is swapped now and then.";

    /// <summary>Of a unit.</summary>
    /// <param name="nowYear">The year of now.</param>
    public static DatedUnit Of(BenchUnit unit, KindDates dates, int nowYear)
    {
        var seen = unit.All<DetailSeen>().GroupBy(d => d.Fact.Detail, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Fact);
        // A variant that was taken from the type says nothing; what was entered stays in the log.
        ImmutableArray<DatedLine> lines =
        [
            .. dates
                .Details.Where(d => !d.Variants.IsEmpty)
                .Select(d => new DatedLine(
                    d,
                    seen.GetValueOrDefault(d.Id) is { Shows.Length: > 0 } said && Means(d, said.Shows) ? said : null,
                    null
                )),
        ];
        if (!dates.CanDate)
            return new(lines, null, "", "");
        var question = Asked(lines, dates, Math.Max(nowYear, dates.LastYear!.Value));
        var read = QuestionFile.Read(question, null);
        if (read.Question is not { } sound)
            return new(
                lines,
                null,
                lines.Length <= DatesEdit.MostOfEach && read.Problems.All(p => p.Path == "$.details")
                    ? NoYear
                    : "The years of this type cannot be used. Look through them.",
                question
            );
        var answer = (DatingAnswer)sound.Answer();
        var argued = answer.Details.ToDictionary(d => d.Id, StringComparer.Ordinal);
        return new([.. lines.Select(l => l with { Argues = argued.GetValueOrDefault(l.Detail.Id) })], answer, "", question);
    }

    /// <summary>True once something was seen that dates it.</summary>
    public bool IsSeen => Answer is { Details.IsEmpty: false };

    /// <summary>True where one year is more probable than another: before anything was seen, only where more were made in it.</summary>
    public bool IsUneven => IsSeen || (Answer is { } answer && answer.Years.Any(y => Math.Abs(y.Percent - answer.Years[0].Percent) > 1e-6));

    /// <summary>True where what was seen leaves fewer years than its type was made in.</summary>
    public bool IsNarrowed => IsSeen && Answer!.To - Answer.From + 1 < Answer.Years.Length;

    /// <summary>In one sentence, for its card and papers: "Probably made between 1951 and 1954 (92 in 100)."; empty before anything was seen.</summary>
    public string Sentence => IsSeen ? Answer!.Words[0] : "";

    /// <summary>The detail that argues against, or null.</summary>
    public DatedLine? Against => Details.FirstOrDefault(l => l.Detail.Id == Answer?.Against);

    /// <summary>The detail to look at next: the best of those that nobody looked at; null where none tells more.</summary>
    public DatedLine? Next =>
        Answer?.Next.FirstOrDefault(n => n.Bits is not null) is { } next ? Details.First(l => l.Detail.Id == next.Id) : null;

    private static bool Means(DateDetail detail, string shows) =>
        shows is DetailSeen.Another or DetailSeen.CannotTell || detail.Variants.Any(v => v.Id == shows);

    private static string Asked(ImmutableArray<DatedLine> lines, KindDates dates, int nowYear)
    {
        // One that nothing was entered of is not in the question, and none comes with one that comes with a third itself (of two benches
        // each may have said one of these); what comes with it was swapped with it all the same.
        var asked = lines.Where(l => l.Detail.With.Length == 0).Select(l => l.Detail.Id).ToHashSet(StringComparer.Ordinal);
        DateDetail Alone(DateDetail d) => d.With.Length == 0 || asked.Contains(d.With) ? d : SwappedWith.Alone(d, dates.Details);
        return JsonSerializer.Serialize(
            new
            {
                ohmstead = QuestionFile.Mark,
                question = "dating",
                made = new MadeSaid(dates.FirstYear, dates.LastYear, dates.Shares),
                nowYear,
                donorPercent = dates.DonorPercent,
                details = lines
                    .Select(l => (Detail: Alone(l.Detail), l.Said))
                    .Select(l => new
                    {
                        id = l.Detail.Id,
                        title = l.Detail.Title,
                        swappedPercent = l.Detail.SwappedPercent,
                        with = l.Detail.With.Length > 0 ? l.Detail.With : null,
                        variants = l.Detail.Variants.Select(v => new
                        {
                            id = v.Id,
                            title = v.Title,
                            firstYear = v.FirstYear,
                            lastYear = v.LastYear,
                            softYears = v.SoftYears,
                        }),
                        seen = l.Said?.Shows,
                    }),
            },
            Indented
        );
    }
}

/// <summary>A detail, and what was seen of it.</summary>
/// <param name="Said">What was last entered; null for nothing that counts.</param>
/// <param name="Argues">How it argues; null where it says nothing.</param>
public sealed record DatedLine(DateDetail Detail, DetailSeen? Said, DetailArgument? Argues)
{
    /// <summary>Chance that it was swapped since, in words: "71 in 100"; empty where it says nothing.</summary>
    public string Swapped => Argues is null ? "" : InHundred(Argues.SwappedPercent);

    /// <summary>A chance in words: neither sure nor impossible where it is not.</summary>
    public static string InHundred(double percent) =>
        percent >= 99.5 ? "more than 99 in 100"
        : percent < 0.5 ? "less than 1 in 100"
        : $"{percent.ToString("0", CultureInfo.InvariantCulture)} in 100";

    /// <summary>How it argues, in words; empty where it says nothing.</summary>
    public string Says =>
        Argues is null ? ""
        : Argues.Argues == "for"
            ? $"speaks for these years: {(double.IsFinite(Argues.Times) ? $"{Times} times as likely in them as in the others" : "it is seen in no others")}"
        : Argues.SwappedPercent >= 50
            ? $"{(Argues.Argues == "against" ? "speaks against these years" : "says little about the years")}: probably swapped later ({Swapped})"
        : Argues.Argues == "against" ? $"speaks against these years, and was probably not swapped (swapped in {Swapped}): look again"
        : "says little about the years";

    private string Times => Argues!.Times.ToString(Argues.Times < 9.5 ? "0.#" : "0", CultureInfo.InvariantCulture);

    /// <summary>What was seen, in words.</summary>
    public string Words =>
        Said?.Shows switch
        {
            null => "not looked at",
            DetailSeen.Another => "none of those known",
            DetailSeen.CannotTell => "could not tell",
            var shows => Detail.Variants.First(v => v.Id == shows).Title,
        };
}
