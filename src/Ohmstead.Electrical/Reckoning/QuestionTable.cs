using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Dating;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.Reckoning.Proving;

namespace Ohmstead.Electrical.Reckoning;

/// <summary>Every question that can be asked: the word in the file, and what reads its fields.</summary>
public static class QuestionTable
{
    /// <summary>By word, in the order of the alphabet.</summary>
    public static ImmutableSortedDictionary<string, Func<QuestionFields, Question>> Readers { get; } =
        new Dictionary<string, Func<QuestionFields, Question>>
        {
            ["batch"] = Batch.Read,
            ["breaker"] = Breaker.Read,
            ["cord"] = Cord.Read,
            ["dating"] = DatingByDetails.Read,
            ["fuse"] = FuseChoice.Read,
            ["heat-run"] = HeatRun.Read,
            ["lamp"] = LampInPlace.Read,
            ["load-budget"] = LoadBudget.Read,
            ["meter-shows"] = MeterShows.Read,
            ["now-or-later"] = RenewalChoice.Read,
            ["own-bands"] = OwnBands.Read,
            ["quote"] = Quote.Read,
            ["rectifier"] = RectifierChoice.Read,
            ["regulation"] = Regulation.Read,
            ["resistance-wire"] = ResistanceWire.Read,
            ["rise"] = Rise.Read,
            ["rise-elsewhere"] = RiseElsewhere.Read,
            ["roller"] = Roller.Read,
            ["standards"] = ToyStandards.Read,
            ["stock"] = Stock.Read,
            ["together"] = Together.Read,
            ["verdict"] = Verdict.Read,
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);
}
