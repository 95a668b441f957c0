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
        var (taken, again, number) = TakenOf(test, shop);
        // What was read counts: no reason hides a reading that failed.
        if ((taken is null || again.Length > 0 || taken.NotTaken.Length > 0) && LeftOut(test, number) is { } left)
            (taken, again) = left;
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

    /// <summary>What was read, why it is to be read again (empty when it counts), and the number of its entry.</summary>
    private (TestTaken? Taken, string Again, int Number) TakenOf(BenchTest test, Shop shop) =>
        test.Sort switch
        {
            TestSort.Regulation => (null, "", 0),
            TestSort.HeatRun => HeatTaken(),
            TestSort.Breaker => BreakerTaken(test.About),
            _ => test.Offer is null ? OwnTaken(test) : ReadingTaken(test, shop),
        };

    /// <summary>
    /// A test that was left out with a reason, and not read since: it is not asked for until something changes that asks for it again.
    /// What is so because the unit is made so is not asked again at all.
    /// </summary>
    /// <param name="number">Of the entry that it was read with last.</param>
    private (TestTaken Taken, string Again)? LeftOut(BenchTest test, int number)
    {
        if (unit.All<TestNotTaken>().LastOrDefault(n => n.Fact.Test == test.Id) is not { Fact: { } fact, Entry: { } entry })
            return null;
        if (entry.Number < number)
            return null;
        // The same words at another test are a reason like any other.
        var isByDesign = fact.IsByDesign && test.Sort is (TestSort.GroundWire or TestSort.SecondaryToCore);
        var again =
            isByDesign ? DesignAgain(test, entry.Number)
            : test.Sort == TestSort.HeatRun ? HeatAgain(entry.Number)
            : test.Sort == TestSort.Breaker ? BreakerAgain(test.About, entry.Number)
            : Again(entry.Number, isOfClosedCase: test.Offer is null || test.Sort is TestSort.Insulation);
        return (TestTaken.Of(entry, fact) with { IsLeftOut = !isByDesign }, again);
    }

    private (TestTaken?, string, int) OwnTaken(BenchTest test) =>
        unit.All<TestRead>().LastOrDefault(t => t.Fact.Test == test.Id) is { Fact: { } read, Entry: { } entry }
            ? (TestTaken.Of(entry, read), Again(entry.Number, isOfClosedCase: true), entry.Number)
            : (null, "", 0);

    /// <summary>A reading that a change may have moved does not count, by the rule that holds for all readings.</summary>
    private (TestTaken?, string, int) ReadingTaken(BenchTest test, Shop shop)
    {
        var id = test.Offer!.Spec.Id;
        // A value counts until another one: that the reading could not be taken later hides no value that failed.
        var value = unit.CurrentReadings.LastOrDefault(r => r.Fact.ReadingId == id && r.Fact.Shown.Kind != ShownKind.NotTaken);
        if (
            (value.Fact is null ? test.Offer.Last : value) is not { } last
            || TestTaken.Of(test, last.Entry, last.Fact, shop) is not { } taken
        )
            return (null, unit.All<ReadingEntered>().Any(r => r.Fact.ReadingId == id) && unit.LastChange > 0 ? Changed(0) : "", 0);
        var number = last.Entry.Number;
        // Read four times over: the test holds all of them, the reading their mean.
        if (
            unit.All<TestRead>().LastOrDefault(t => t.Fact.Test == test.Id && t.Entry.Number > number) is { Fact: { } four } own
            && !four.Values.IsEmpty
            && !taken.Values.IsEmpty
            && Math.Abs(four.Values.Average() - taken.Values[0]) <= 1e-9 * Math.Abs(taken.Values[0])
        )
            taken = TestTaken.Of(own.Entry, four);
        return (taken, test.Sort is TestSort.Insulation ? AgainClosed(number) : "", number);
    }

    private (TestTaken?, string, int) HeatTaken() =>
        unit.All<HeatRunEnded>().LastOrDefault(h => h.Fact.RiseKelvin is not null) is { Fact: { } fact, Entry: { } entry }
            ? (new TestTaken(entry.At, [fact.RiseKelvin.GetValueOrDefault()], null, 0, 0, null, ""), HeatAgain(entry.Number), entry.Number)
            : (null, "", 0);

    private (TestTaken?, string, int) BreakerTaken(string breaker) =>
        unit.All<BreakerTimed>().LastOrDefault(b => b.Fact.Breaker == breaker && b.Fact.Why.Length == 0)
            is { Fact: { } fact, Entry: { } entry }
            ? (new TestTaken(entry.At, [fact.Seconds], null, 0, 0, null, ""), BreakerAgain(breaker, entry.Number), entry.Number)
            : (null, "", 0);

    /// <summary>A new cord may have brought the ground wire that the old one had not.</summary>
    private string DesignAgain(BenchTest test, int number) =>
        test.Sort == TestSort.GroundWire
        && unit.All<PartChanged>()
            .LastOrDefault(p =>
                p.Entry.Number > number && p.Fact.Change is (PartChange.Renewed or PartChange.Replaced) && IsOfCord(p.Fact.Element)
            )
            is { Fact: { } cord }
            ? $"Again: {PartNames.Of(sheet, cord.Element)} was changed."
            : "";

    private static bool IsOfCord(string element) => element.StartsWith("cord", StringComparison.Ordinal);

    private string HeatAgain(int number) =>
        ForHeatOf(unit, sheet, number) is { Length: > 0 } since ? $"Again: {Sentences.Small(since)}" : "";

    private string BreakerAgain(string breaker, int number) =>
        unit.All<PartChanged>().Any(p => p.Fact.Element == breaker && p.Entry.Number > number)
            ? $"Again: {PartNames.Of(sheet, breaker)} was changed."
            : "";

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
