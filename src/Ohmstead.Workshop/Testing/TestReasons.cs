using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Testing;

/// <summary>Why a test is asked for on this unit, and what of it was read on the unit as it is now.</summary>
internal sealed class TestReasons(BenchUnit unit, TypeSheet sheet)
{
    private readonly int closedAt = unit.All<PutBack>().Select(b => b.Entry.Number).DefaultIfEmpty(0).Last();

    /// <summary>What asks for a heat run: a coil or what runs on it was found bad or changed, or the unit makes heat that nothing explains.</summary>
    public string ForHeat { get; } = ForHeatOf(unit, sheet);

    /// <summary>The test with what was read of it and why it is asked for.</summary>
    public BenchTest Ask(BenchTest test, Shop shop)
    {
        var (taken, again) = TakenOf(test, shop);
        return test with { Taken = again.Length == 0 ? taken : null, Why = again.Length > 0 ? again : Why(test) };
    }

    private string Why(BenchTest test) =>
        test.Sort switch
        {
            TestSort.Insulation => "Every unit, before mains.",
            TestSort.GroundWire => "Only where a ground wire is fitted.",
            TestSort.TouchCurrent => "Every unit: the last test on mains.",
            TestSort.Breaker when Touched(test.About) is { Length: > 0 } why => why,
            TestSort.Breaker => "Every unit with a breaker.",
            TestSort.HeatRun => ForHeat.Length > 0 ? ForHeat : "Your choice: nothing here asks for it.",
            TestSort.WhistleFirst or TestSort.WhistleSecond => "Every unit with a whistle.",
            _ => "Every unit.",
        };

    /// <summary>What was read, and why it is to be read again; empty when it counts.</summary>
    private (TestTaken? Taken, string Again) TakenOf(BenchTest test, Shop shop) =>
        test.Sort switch
        {
            TestSort.Regulation => (null, ""),
            TestSort.HeatRun => HeatTaken(),
            TestSort.Breaker => BreakerTaken(test.About),
            _ => test.Offer is null ? OwnTaken(test) : ReadingTaken(test, shop),
        };

    private (TestTaken?, string) OwnTaken(BenchTest test)
    {
        var last = unit.Standing.Select(e => (Entry: e, Taken: Of(e, test.Id))).LastOrDefault(e => e.Taken is not null);
        if (last.Taken is null || (test.Sort == TestSort.GroundWire && last.Taken.NotTaken.Length > 0))
            return (last.Taken, "");
        return (last.Taken, Again(last.Entry.Number, isOfClosedCase: true));
    }

    private static TestTaken? Of(Entry entry, string test) =>
        entry.Fact switch
        {
            TestRead r when r.Test == test => TestTaken.Of(entry, r),
            TestNotTaken n when n.Test == test => TestTaken.Of(entry, n),
            _ => null,
        };

    /// <summary>A reading that a change may have moved does not count, by the rule that holds for all readings.</summary>
    private (TestTaken?, string) ReadingTaken(BenchTest test, Shop shop)
    {
        var id = test.Offer!.Spec.Id;
        if (test.Offer.Last is not { } last || TestTaken.Of(test, last.Entry, last.Fact, shop) is not { } taken)
            return (null, unit.All<ReadingEntered>().Any(r => r.Fact.ReadingId == id) && unit.LastChange > 0 ? Changed(0) : "");
        var number = last.Entry.Number;
        // Read four times over: the test holds all of them, the reading their mean.
        if (
            unit.All<TestRead>().LastOrDefault(t => t.Fact.Test == test.Id && t.Entry.Number > number) is { Fact: { } four } own
            && !four.Values.IsEmpty
            && !taken.Values.IsEmpty
            && Math.Abs(four.Values.Average() - taken.Values[0]) <= 1e-9 * Math.Abs(taken.Values[0])
        )
            taken = TestTaken.Of(own.Entry, four);
        return (taken, test.Sort is TestSort.Insulation ? AgainClosed(number) : "");
    }

    private (TestTaken?, string) HeatTaken()
    {
        if (unit.All<HeatRunEnded>().LastOrDefault(h => h.Fact.RiseKelvin is not null) is not { Fact: { } fact, Entry: { } entry })
            return (null, "");
        return (
            new TestTaken(entry.At, [fact.RiseKelvin.GetValueOrDefault()], null, 0, 0, null, ""),
            ForHeatOf(unit, sheet, entry.Number) is { Length: > 0 } since ? $"Again: {Sentences.Small(since)}" : ""
        );
    }

    private (TestTaken?, string) BreakerTaken(string breaker)
    {
        var last = unit.All<BreakerTimed>().LastOrDefault(b => b.Fact.Breaker == breaker && b.Fact.Why.Length == 0);
        if (last.Fact is null)
            return
                unit.All<TestNotTaken>().LastOrDefault(n => n.Fact.Test == TestList.OfBreaker(breaker)) is { Fact: { } not, Entry: { } at }
                ? (TestTaken.Of(at, not), "")
                : (null, "");
        var changed = unit.All<PartChanged>().Any(p => p.Fact.Element == breaker && p.Entry.Number > last.Entry.Number);
        return (
            new TestTaken(last.Entry.At, [last.Fact.Seconds], null, 0, 0, null, ""),
            changed ? $"Again: {PartNames.Of(sheet, breaker)} was changed." : ""
        );
    }

    private string Again(int number, bool isOfClosedCase) =>
        unit.LastChange > number ? Changed(number)
        : isOfClosedCase ? AgainClosed(number)
        : "";

    private string AgainClosed(int number) => closedAt > number ? "Again, now that it is closed: a wire may be pinched." : "";

    private string Changed(int number) =>
        $"Again: {Sentences.List(unit.All<PartChanged>().Where(p => p.Entry.Number > number).Select(p => PartNames.Of(sheet, p.Fact.Element)).Distinct())} changed.";

    private string Touched(string element) =>
        unit.All<PartChanged>().Any(p => p.Fact.Element == element) ? "It was changed."
        : unit.Confirmed.Any(f => f.Fact.Element == element) ? "A fault was found in it."
        : "";

    private static string ForHeatOf(BenchUnit unit, TypeSheet sheet, int after = 0)
    {
        bool IsOfCoil(string id) => sheet.Windings.Any(w => w.Id == id || w.Sliders.Any(s => s.Id == id));
        if (unit.All<PartChanged>().LastOrDefault(p => p.Entry.Number > after && IsOfCoil(p.Fact.Element)) is { Fact: { } changed })
            return $"{Sentences.Large(PartNames.Of(sheet, changed.Element))} was changed.";
        if (unit.Confirmed.LastOrDefault(f => f.Entry.Number > after && IsOfCoil(f.Fact.Element)) is { Fact: { } found })
            return $"{Sentences.Large(PartNames.Headline(sheet, found.Element, found.Mode))} was found.";
        return "";
    }
}
