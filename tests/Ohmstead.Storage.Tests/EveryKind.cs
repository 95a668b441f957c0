using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Storage.Tests;

/// <summary>A fact of every kind, and one of a kind that this version does not know.</summary>
internal static class EveryKind
{
    public static Fact[] Facts(Draft draft) =>
        [
            new TakenIn("12", "twin", "A. Brass", "hums"),
            new CardChanged("12b", "twin", "A. Brass", "by post", "hums", "by Easter"),
            new SignAnswered("hums", Answer.Yes),
            new ConditionNoted("cord", "brittle", Decision.Renew, ""),
            new DamagePinned(new string('a', 64), 0.25, 0.75, "chip"),
            new PhotoAdded(new string('b', 64), "front", ""),
            new BenchSet(
                BenchState.AsSheet with
                {
                    SupplyVolts = 121.5,
                    Throttles = BenchState.AsSheet.Throttles.Add("left", 0.5),
                }
            ),
            new ReadingEntered("a", Shown.OverRange, BenchState.AsSheet),
            new ReadingEntered("b", Shown.Jumps(1.5, null), BenchState.AsSheet),
            new ReadingEntered("c", Shown.NotTaken("cannot reach"), BenchState.AsSheet),
            new ReadingWaived("d", "no tester", "A. Brass", "looked"),
            new FindingJudged("roller", "worn", Judgement.Confirmed, "pitted"),
            new PartChanged("roller", PartChange.Renewed, null, "new roller"),
            new StageClosed(Stage.Papers, true, ""),
            new PaperMade("service-record"),
            new Noted("ünïcode Ω µ ≥ 漢"),
            new Corrected(draft.Id(), new Noted("right")),
            new Corrected(draft.Id(), null),
            new Unread("""{"kind":"of-next-year","x":[1,2]}"""),
        ];
}
