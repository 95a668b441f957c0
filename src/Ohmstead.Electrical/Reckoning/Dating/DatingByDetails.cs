using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Dating;

/// <summary>
/// <c>dating</c>: when was a unit made, by the details it shows, any of which may have been swapped since? All sums are exact
/// (docs/methods/dating.md).
/// </summary>
/// <param name="RangeShare">How sure the range of years is to be [0..1].</param>
internal sealed record DatingByDetails(MadeYears Made, ImmutableArray<DatedDetail> Details, double RangeShare) : Question
{
    private const int MostDetails = 40;

    private const double Rounding = 1e-12;

    /// <summary>The usual chance of the range [%].</summary>
    private const double UsualRangePercent = 90;

    /// <summary>Reads its fields.</summary>
    public static DatingByDetails Read(QuestionFields fields)
    {
        var made = MadeYears.Read(fields);
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var place = 0;
        var read = fields.List("details", f => DatedDetail.Read(f, place++, taken), most: MostDetails);
        var percent = fields.Number("rangePercent", new NumberRange(0, 100, WithoutLow: true), UsualRangePercent);
        var question = new DatingByDetails(made, fields.IsSoundAt("details") ? Together(fields, read) : read, percent / 100);
        if (fields.IsSoundAt("details") && fields.IsSoundAt("made") && fields.IsSoundAt("nowYear") && !question.IsPossible)
            fields.Report(
                "details",
                "cannot all be of one unit: no year is left",
                "look again; or give one that may have been swapped a swappedPercent above 0"
            );
        return question;
    }

    /// <summary>Which details are swapped together; one that comes with another has none that come with it.</summary>
    private static ImmutableArray<DatedDetail> Together(QuestionFields fields, ImmutableArray<DatedDetail> details)
    {
        var ids = details.Select(d => d.Id).ToList();
        var places = fields.Places("details");
        var together = details.ToBuilder();
        for (var d = 0; d < details.Length; d++)
        {
            if (!places[d].Has("with"))
                continue;
            var with = ids.IndexOf(places[d].KnownId("with", ids, "detail"));
            if (with < 0)
                continue;
            if (with == d || places[with].Has("with"))
                places[d]
                    .Report(
                        "with",
                        with == d ? "is the detail itself" : $"\"{ids[with]}\" comes with another detail",
                        "name the detail that the others come with"
                    );
            together[d] = details[d] with { With = with };
        }
        return together.ToImmutable();
    }

    private int?[] Seen => [.. Details.Select(d => d.Seen)];

    private bool IsPossible => DetailTables.Of(Made, Details).Joint(Seen).Sum() > 0;

    /// <inheritdoc/>
    public override DatingAnswer Answer()
    {
        var tables = DetailTables.Of(Made, Details);
        var joint = tables.Joint(Seen);
        var years = Spread(joint);
        var range = YearRange.Shortest(years, RangeShare);
        var argued = DetailArguments.Of(tables, Seen, joint, range);
        var against = DetailArguments.MostAgainst(argued);
        var next = NextDetails.Of(tables, Seen);
        // Years that are alike may differ in the last digit.
        var best = Array.FindIndex(years, y => y >= years.Max() - Rounding);
        var answer = new DatingAnswer(
            [.. years.Select((chance, y) => new YearChance(Made.First + y, 100 * chance))],
            Made.First + range.First,
            Made.First + range.Last,
            100 * Math.Min(1, range.Chance),
            Made.First + best,
            [.. argued.Select(a => a.Answer)],
            against?.Answer.Id,
            [.. against is null ? [] : new[] { new NextDetail(against.Answer.Id, NextDetail.ArguesAgainst, null) }, .. next]
        );
        return answer with
        {
            Words = DatingWords.Of(answer, this),
            Cautions = answer.Next.IsEmpty ? [] : ["Pull the plug before you look closely. Take no cover off to date a unit."],
            Outside =
            [
                "Years and chances are those that were entered. A wrong year gives a wrong answer, and a sure one.",
                "A swapped part is taken to be of any year from the unit’s own to now, each alike, or of another unit of its type: common practice, no source.",
            ],
        };
    }

    private static double[] Spread(double[] joint)
    {
        var sum = joint.Sum();
        return [.. joint.Select(j => j / sum)];
    }
}

/// <summary>What <c>dating</c> answers.</summary>
/// <param name="Years">Each year of making, and its chance.</param>
/// <param name="From">First year of the shortest range that is as sure as asked for; of two the more probable, then the earlier.</param>
/// <param name="To">Its last year.</param>
/// <param name="Percent">How sure it is.</param>
/// <param name="MostProbable">The most probable year, of two the earlier.</param>
/// <param name="Details">What each detail that was seen says, in the question's order.</param>
/// <param name="Against">Id of the detail that argues most against the range; null where none does.</param>
/// <param name="Next">What to look at next, and photograph: first what argues against, then what tells most.</param>
public sealed record DatingAnswer(
    ImmutableArray<YearChance> Years,
    int From,
    int To,
    double Percent,
    int MostProbable,
    ImmutableArray<DetailArgument> Details,
    string? Against,
    ImmutableArray<NextDetail> Next
) : Answer;

/// <summary>A year, and the chance that the unit was made in it.</summary>
public sealed record YearChance(int Year, double Percent);

/// <summary>How a detail argues.</summary>
/// <param name="Times">How many times as likely it is in a unit of the range as in one of the other years, given what else was seen; null where it rules the other years out by itself, or none is left without it.</param>
/// <param name="FitsPercent">Units of the range that showed it when they were new.</param>
/// <param name="SwappedPercent">Chance that it was swapped since.</param>
/// <param name="Argues">for, against or neither.</param>
public sealed record DetailArgument(string Id, double Times, double FitsPercent, double SwappedPercent, string Argues);

/// <summary>A detail to look at.</summary>
/// <param name="Why">argues against, or tells most.</param>
/// <param name="Bits">How much it tells of the year on average; null for what argues against.</param>
public sealed record NextDetail(string Id, string Why, double? Bits)
{
    internal const string ArguesAgainst = "argues against";

    internal const string TellsMost = "tells most";
}
