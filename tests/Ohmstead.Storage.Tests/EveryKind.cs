using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Storage.Tests;

/// <summary>A fact of every kind, and one of a kind that this version does not know.</summary>
internal static class EveryKind
{
    public static Fact[] Facts(Draft draft) =>
        [
            new TakenIn("12", "twin", "A. Brass", "hums"),
            new CardChanged("12b", "twin", "A. Brass", "by post", "hums", "by Easter"),
            new PlateRead(120, null),
            new TerminalNamed("untyped-post-1", "A", true),
            new CarriedOver("twin", ImmutableSortedDictionary<string, string>.Empty.Add("untyped-blades", "blades")),
            new SheetKept("twin", 2),
            new PracticeBegun(7),
            new SignAnswered("hums", Answer.Yes),
            new ConditionNoted("cord", "brittle", Decision.Renew, ""),
            new ConditionNoted("cord", "crumbling, bare wire showing; sleeved", Decision.MadeGood, ""),
            new NotLookedAt("sleeves", "the cover is riveted", "A. Brass"),
            new DamagePinned(new string('a', 64), 0.25, 0.75, "chip"),
            new PhotoAdded(new string('b', 64), "front", ""),
            new BenchSet(BenchState.AsSheet with { SupplyVolts = 121.5, Throttles = BenchState.AsSheet.Throttles.Add("left", 0.5) }),
            new ReadingEntered("a", Shown.OverRange, BenchState.AsSheet),
            new ReadingEntered("b", Shown.Jumps(1.5, null), BenchState.AsSheet),
            new ReadingEntered("c", Shown.NotTaken("cannot reach"), BenchState.AsSheet),
            new ReadingWaived("d", "no tester", "A. Brass", "looked"),
            new SupplyStated(12.3, 0.02, "A. Brass"),
            new RewireChecked("0123456789abcdef", "A. Brass", "the breaker"),
            new WireChecked(["lug-1"], ["post-1", "post-2"], Shown.OverRange, true),
            new PowerTried(24, 0.12, null, true),
            new SweepTaken("full-1", "throttle-1", [new(0, 6.2), new(1, 19.9)], BenchState.AsSheet),
            new TestRead(
                "touch-current",
                "Touch current",
                TestRead.Of(0.045, 0.061),
                null,
                new(null, 0.25, "mA", "a rule"),
                0.8,
                0.03,
                new("1500-ohm", 60, true)
            ),
            new TestRead("reading-a", "Plug to core", [], 1000, new(2, null, "MΩ", "a rule"), 5, 0.02, null),
            new TestNotTaken("ground", "Ground wire", "none fitted"),
            new HeatRunBegun(DateTimeOffset.UnixEpoch, 3.02, 20.5, 6, 65, "a rule", 0.25, 10),
            new HeatUnplugged(10.1),
            new HeatRead(10.1, 20, 3.21, 21),
            new HeatCooled(60, 3.19),
            new HeatRunEnded(60, 22, 52.1, 44.8, 59.9, "below", ""),
            new HeatRunEnded(0, 0, null, null, null, "go on", "smoke"),
            new LoadForHours(6.7, 30, 11, 22),
            new BreakerStarted("breaker", 20, 67.1, 35.5, null),
            new BreakerTimed("breaker", 20, 43.2, true, ""),
            new FindingJudged("roller", "worn", Judgement.Confirmed, "pitted"),
            new PartChanged("roller", PartChange.Renewed, null, "new roller"),
            new PartChanged("disc", PartChange.Renewed, null, "")
            {
                From = new(draft.Id(), draft.Id(), 1, "Whistle disc", "A. Brass, lot 41"),
                Also = [new(draft.Id(), null, 2, "Fiber washer", "")],
            },
            new PartChanged("w-1", PartChange.Moved, System.Text.Json.JsonDocument.Parse("""{"to":"post-2"}""").RootElement, ""),
            new PartDecided("disc-1", "high-drop", DecidedAct.Replace, "silicon diode", 1.40m, null, "weak", [new("slopeVolts", 0.045)]),
            new LooksNoted("Lettering", "worn at the thumb", true, 20, 3.25m),
            new EstimateMade([new("Roller", 20, 5.10m, 71.5, false)], 79, 106, 72, 104, 120, [new("a lug breaks", 20)], new(2026, 12, 30)),
            new GoAheadGiven(new(2026, 11, 27), "by phone", 120, "keep the old knobs"),
            new Billed(93.50m, "paid in cash"),
            new JointSeen(WiringState.Found, "post-1", [new("w-1.to", "red"), new("w-2.from", "")], new string('c', 64), 0.5, 0.25),
            new WiringFrozen(WiringState.Left),
            new WayChosen(["bridge", "disc-out"]),
            new TakenOff("bridge", 11, 5, "two springs"),
            new PieceNoted("bridge", PieceFate.Lost, 1, "a spring"),
            new PutBack("bridge", 4, 1, "", ""),
            new StageClosed(Stage.Papers, true, ""),
            new Returned(ReturnManner.NotToBePluggedIn, "A. Brass"),
            new PaperMade("service-record"),
            new HumRecorded(HumState.Lifted, new string('d', 64), new string('e', 64), ["hum", "buzz"]),
            new LayoutStated([new("post-1", "post-2", [new("motor", 2), new("lamp", 9)], new(18, 20)), new("post-3", "post-2", [], null)]),
            new Noted("ünïcode Ω µ ≥ 漢"),
            new Corrected(draft.Id(), new Noted("right")),
            new Corrected(draft.Id(), null),
            new Unread("""{"kind":"of-next-year","x":[1,2]}"""),
        ];
}
