using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Job;

/// <summary>From a unit to what its papers are made from: every reading against what this meter shows on a sound unit.</summary>
public static class UnitJudge
{
    /// <summary>Judges the whole unit. Cost: some milliseconds a reading.</summary>
    /// <param name="kind">The type sheet of the unit; null when there is none or it has problems.</param>
    /// <param name="at">When, in the time of the bench.</param>
    /// <param name="bandsOf">Readings that are not taken and whose band is wanted all the same: what a bench sheet asks for.</param>
    public static JudgedUnit Make(BenchUnit unit, TypeSheet? kind, Shop shop, DateTimeOffset at, Func<ReadingSpec, bool>? bandsOf = null)
    {
        var own = kind is null ? null : OwnSheet.OnBench(unit, kind, shop).Value;
        if (own is null)
            return new(unit, null, shop, [], Unjudged(unit, kind), new Rating(0, 0, ""), [], at);
        var model = new UnitModel(own);
        var taken = BenchReadings.Of(unit, model, shop).Value;
        var doubts = taken is null ? [] : BenchDoubt.Of(own, taken, unit.Doubts.Bench);
        var judge = new Judge(unit, model, shop, taken, bandsOf, doubts);
        ImmutableArray<ReadingLine> lines = [.. own.Readings.Select(judge.Line)];
        var rating = Outlets.RatingOf(own, shop);
        var earlier = unit.All<ReadingEntered>().Where(r => !unit.IsOfNow(r.Entry, r.Fact.ReadingId)).ToList();
        var judged = new JudgedUnit(unit, own, shop, lines, EarlierLines(unit, kind!, shop, earlier), rating, Outlets.Of(model, rating), at)
        {
            Doubts = doubts,
            Tests = taken is null || !TestList.IsBegun(unit) ? [] : TestsOf(unit, model, shop, taken, lines),
        };
        return judged with { Layout = LayoutBudget.Of(judged) };
    }

    private static ImmutableArray<TestResult> TestsOf(
        BenchUnit unit,
        UnitModel model,
        Shop shop,
        UnitReadings taken,
        ImmutableArray<ReadingLine> lines
    ) =>
        [
            .. TestList
                .Of(unit, model, shop, ReadingOffer.All(unit, model, taken, shop))
                .Select(t => TestResult.Of(t, unit, model, shop, lines.FirstOrDefault(l => l.Id == t.Offer?.Spec.Id)?.Band)),
        ];

    /// <summary>Readings before the last change, judged against the kind as it is usual: what exactly it was then is past.</summary>
    private static ImmutableArray<ReadingLine> EarlierLines(
        BenchUnit unit,
        TypeSheet kind,
        Shop shop,
        List<(Entry Entry, ReadingEntered Fact)> earlier
    )
    {
        if (earlier.Count == 0)
            return [];
        var judge = new Judge(unit, new UnitModel(ShopLimits.Bind(kind, shop)), shop, null, null, []);
        return
        [
            .. earlier
                .Where(r => kind.FindReading(r.Fact.ReadingId) is not null)
                .Select(r => judge.Line(kind.FindReading(r.Fact.ReadingId)!, r.Entry, r.Fact)),
        ];
    }

    private static ImmutableArray<ReadingLine> Unjudged(BenchUnit unit, TypeSheet? kind) =>
        [
            .. unit.All<ReadingEntered>()
                .Select(r =>
                {
                    var spec = kind?.FindReading(r.Fact.ReadingId);
                    return new ReadingLine(
                        r.Fact.ReadingId,
                        PartNames.Reading(kind, r.Fact.ReadingId),
                        "",
                        "",
                        "",
                        ReadingWords.Shown(r.Fact.Shown, spec?.Quantity),
                        "not judged",
                        Weight.Absent,
                        false,
                        CheckEnd.NotTaken,
                        "",
                        "",
                        "",
                        r.Fact.Shown.Why,
                        null,
                        r.Entry.At
                    );
                }),
        ];
}

/// <summary>Judges the readings of one unit.</summary>
/// <param name="taken">What was read on the unit as it is now, for its gates; null when that is past.</param>
/// <param name="doubts">What is doubted of its bench.</param>
internal sealed class Judge(
    BenchUnit unit,
    UnitModel model,
    Shop shop,
    UnitReadings? taken,
    Func<ReadingSpec, bool>? bandsOf,
    ImmutableArray<BenchDoubt> doubts
)
{
    private readonly Dictionary<string, (Entry Entry, ReadingEntered Fact)> last = unit
        .CurrentReadings.GroupBy(r => r.Fact.ReadingId, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Last(), StringComparer.Ordinal);

    private readonly Dictionary<string, ReadingWaived> waivers = unit
        .CurrentWaivers.GroupBy(w => w.Fact.ReadingId, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Last().Fact, StringComparer.Ordinal);

    /// <summary>A reading of the sheet as it stands now.</summary>
    public ReadingLine Line(ReadingSpec spec) =>
        last.TryGetValue(spec.Id, out var found)
            ? Line(spec, found.Entry, found.Fact)
            : Line(spec, null, new ReadingEntered(spec.Id, Shown.NotTaken(""), unit.Bench));

    /// <summary>A reading as it was entered.</summary>
    public ReadingLine Line(ReadingSpec spec, Entry? entry, ReadingEntered fact)
    {
        var state = BenchConditions.StateOf(model, spec, fact.Bench, shop);
        var meter = MeterInHand.Of(fact.Bench, shop);
        var isTaken = fact.Shown.Kind != ShownKind.NotTaken;
        // A band costs some hundred solutions: none is worked out that no paper shows.
        var expected = isTaken || bandsOf?.Invoke(spec) == true ? Expectation.Of(model, spec, state, meter) : null;
        var meaning = expected is null
            ? new Meaning(Verdict.NotTaken, "not taken")
            : Meaning.Of(fact.Shown, spec, expected, meter.For(spec.Quantity));
        var end = EndOf(spec, isTaken, isTaken ? null : waivers.GetValueOrDefault(spec.Id));
        if (isTaken && taken is not null && unit.Doubts.Why(model.Sheet, spec, end) is { Length: > 0 } why)
            meaning = Meaning.OfDoubted(why, spec);
        var waiver = isTaken ? null : waivers.GetValueOrDefault(spec.Id);
        return new ReadingLine(
            spec.Id,
            PartNames.Reading(model.Sheet, spec.Id),
            ReadingWords.Probes(model.Sheet, spec),
            ReadingWords.Conditions(model.Sheet, spec, state),
            expected?.Band ?? "",
            isTaken ? ReadingWords.Shown(fact.Shown, spec.Quantity) : "",
            waiver is null ? meaning.Words : $"waived by {waiver.WaivedBy}",
            WeightOf(meaning.Verdict),
            spec.IsGate,
            end,
            spec.Limits is null ? "" : LimitWords.WithSource(spec),
            string.Join(" ", ReadingCautions.Own(model, spec, state).Select(Ended)),
            isTaken ? MeterName(fact.Bench.MeterId, spec.Quantity) : "",
            fact.Shown.Why,
            waiver,
            entry?.At
        )
        {
            Band = expected,
            IsDoubted = isTaken && (meaning.Verdict == Verdict.Doubted || doubts.Any(d => d.Covers(spec))),
        };
    }

    private static string Ended(string words) => words.TrimEnd('.') + ".";

    private CheckEnd EndOf(ReadingSpec spec, bool isTaken, ReadingWaived? waiver)
    {
        if (spec.Limits is null || taken is null)
            return CheckEnd.NotTaken;
        if (!isTaken && !taken.Readings.Any(r => r.Spec.Id == spec.Id && r.IsTaken))
            return waiver is null ? CheckEnd.NotTaken : CheckEnd.Waived;
        return Gates.EndOf(taken, spec);
    }

    private string MeterName(string id, Quantity quantity)
    {
        var name = ReadingReader.NameOf(quantity);
        return (
                shop.Meters.FirstOrDefault(m => m.Id == id && m.Errors.ContainsKey(name))
                ?? shop.Meters.FirstOrDefault(m => m.Errors.ContainsKey(name))
            )?.Name
            ?? "";
    }

    private static Weight WeightOf(Verdict verdict) =>
        verdict switch
        {
            Verdict.Normal => Weight.Good,
            Verdict.NotTaken => Weight.Absent,
            Verdict.Failed => Weight.Stop,
            _ => Weight.Look,
        };
}
