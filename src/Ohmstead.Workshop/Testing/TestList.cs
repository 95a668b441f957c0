using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Testing;

/// <summary>Which tests with a limit a unit has, and which of them are due: by its type, and by what was found, replaced and moved on it.</summary>
public static class TestList
{
    /// <summary>Touch current.</summary>
    public const string Touch = "touch-current";

    /// <summary>The ground wire.</summary>
    public const string Ground = "ground";

    /// <summary>The heat run.</summary>
    public const string Heat = "heat-run";

    /// <summary>
    /// Between this and nothing lies the second step of a whistle on a sound unit, above it the first [V]: half way, by ratio, between
    /// their limits of 1 and 4 V.
    /// </summary>
    private const double LeastFirstStep = 2;

    /// <summary>The test that a reading of the sheet is.</summary>
    public static string OfReading(string readingId) => $"reading-{readingId}";

    /// <summary>The test of a breaker.</summary>
    public static string OfBreaker(string breaker) => $"breaker-{breaker}";

    /// <summary>True when a test was taken or left on a unit: not a reading that is taken over.</summary>
    public static bool IsBegun(BenchUnit unit) =>
        unit.Standing.Any(e => e.Fact is TestRead or TestNotTaken or BreakerTimed or HeatRunEnded { RiseKelvin: not null });

    /// <summary>The tests of a unit as its readings are offered now; none where its type, its changes or its readings make no sense.</summary>
    public static ImmutableArray<BenchTest> Of(BenchUnit unit, TypeSheet? sheet, Shop shop)
    {
        if (sheet is null || OwnSheet.OnBench(unit, sheet, shop) is not { IsSound: true } own)
            return [];
        var model = new UnitModel(own.Value!);
        return BenchReadings.Of(unit, model, shop) is { IsSound: true } readings
            ? Of(unit, model, shop, ReadingOffer.All(unit, model, readings.Value!, shop))
            : [];
    }

    /// <summary>The tests of a unit, cold ones first. None without a type: what its limits are is not known.</summary>
    /// <param name="model">The unit's own sheet.</param>
    /// <param name="offers">All readings of it as they are offered now.</param>
    public static ImmutableArray<BenchTest> Of(BenchUnit unit, UnitModel model, Shop shop, ImmutableArray<ReadingOffer> offers)
    {
        var sheet = model.Sheet;
        if (UntypedIds.IsOne(sheet))
            return [];
        var readings = offers.Select(o => OfOffer(o, model)).OfType<BenchTest>().ToList();
        var reasons = new TestReasons(unit, sheet);
        BenchTest[] all =
        [
            .. readings,
            .. Regulations(readings),
            new(Ground, TestSort.GroundWire, "Ground wire, plug to core", 2, "ohmmeter, a file to reach bare metal", "", ""),
            .. MainsLocks(offers) is { } locks ? OnMains(sheet, reasons, locks) : [],
        ];
        return [.. all.Select(t => reasons.Ask(t, shop)).OrderBy(t => t.Sort)];
    }

    /// <summary>
    /// What locks the tests on mains that no reading stands for. Where a unit has none, a lock of its own: nothing says then when mains
    /// may go on.
    /// </summary>
    public static ImmutableArray<LockReason> LocksOf(ImmutableArray<BenchTest> tests) =>
        tests.FirstOrDefault(t => t.Id == Heat)?.Locks ?? [Unknown];

    private static readonly LockReason Unknown = new(
        LockPlace.LookOver,
        "",
        "No reading on mains is known of this unit",
        "Its type has none, or is not known.",
        "Look-over: type"
    );

    /// <summary>The tests on mains that no reading of the sheet stands for.</summary>
    private static IEnumerable<BenchTest> OnMains(TypeSheet sheet, TestReasons reasons, ImmutableArray<LockReason> locks) =>
        [
            new(Touch, TestSort.TouchCurrent, "Touch current, the plug both ways", 4, TouchNeeds, "", "") { Locks = locks },
            new(Heat, TestSort.HeatRun, "Heat run: rise of the windings", 80, HeatNeeds, "", "")
            {
                Locks = locks,
                IsChoice = reasons.ForHeat.Length == 0,
            },
            .. BreakerPlan
                .Breakers(sheet)
                .Select(b => new BenchTest(
                    OfBreaker(b.Id),
                    TestSort.Breaker,
                    $"{PartNames.Title(sheet, b.Id)}: seconds until it opens",
                    3,
                    BreakerNeeds,
                    "",
                    b.Id
                )
                {
                    Locks = locks,
                }),
        ];

    private const string TouchNeeds = "volts AC on a 1.5 kΩ, 10 W resistor to a proved ground";
    private const string HeatNeeds = "load bank, ohmmeter, thermometer";
    private const string BreakerNeeds = "load bank for 20 A, a switch, ammeter";

    /// <summary>
    /// Why mains tests that no reading stands for are locked: all that locks any plain mains reading with the case closed. Null where
    /// the sheet has no such reading, and so nothing says when mains may go on.
    /// </summary>
    private static ImmutableArray<LockReason>? MainsLocks(ImmutableArray<ReadingOffer> offers)
    {
        var plain = offers.Where(o => o is { IsMains: true, Spec: { IsOpenCase: false, State.Source.HasLamp: false } }).ToList();
        return plain.Count == 0 ? null : [.. plain.SelectMany(o => o.Locks).DistinctBy(l => (l.Place, l.About))];
    }

    private static BenchTest? OfOffer(ReadingOffer offer, UnitModel model)
    {
        var (spec, sheet) = (offer.Spec, model.Sheet);
        if (spec.IsOpenCase || spec.State.Lifted.Length > 0 || SortOf(offer, model) is not { } sort)
            return null;
        return new BenchTest(OfReading(spec.Id), sort, PartNames.Reading(sheet, spec.Id), spec.Minutes, Needs(spec), "", "")
        {
            Offer = offer,
            Locks = offer.Locks,
        };
    }

    private static TestSort? SortOf(ReadingOffer offer, UnitModel model)
    {
        var (spec, sheet) = (offer.Spec, model.Sheet);
        if (spec.Quantity == Quantity.InsulationOhms)
            return MainsSide.Of(sheet) is var mains && mains.Contains(spec.From) != mains.Contains(spec.To)
                ? TestSort.Insulation
                : TestSort.SecondaryToCore;
        if (!BenchConditions.IsOnMains(sheet, spec) || spec.State.Source is not { HasLamp: false, SeriesOhms: 0 })
            return null;
        var isAtRest = sheet.Controls.All(c => c.IsThrottle || !spec.State.Controls.ContainsKey(c.Id));
        return spec.Quantity switch
        {
            Quantity.Watts when spec.State.Loads.IsEmpty && isAtRest => TestSort.NoLoadWatts,
            Quantity.AcVolts when isAtRest => spec.State.Loads.IsEmpty ? TestSort.NoLoadVolts : TestSort.LoadedVolts,
            Quantity.DcVolts when !isAtRest && !spec.State.Loads.IsEmpty && HasAcOf(spec, sheet) => Math.Abs(
                new ReadingSolver().Solve(new FaultedCircuits(model, spec, spec.State).Usual, model.Nominal).Value ?? 0
            ) > LeastFirstStep
                ? TestSort.WhistleFirst
                : TestSort.WhistleSecond,
            _ => null,
        };
    }

    /// <summary>A whistle puts DC on a post that gives AC else; a DC unit has no such post.</summary>
    private static bool HasAcOf(ReadingSpec dc, TypeSheet sheet) =>
        sheet.Readings.Any(r =>
            r.Quantity == Quantity.AcVolts
            && BenchConditions.IsOnMains(sheet, r)
            && ((r.From, r.To) == (dc.From, dc.To) || (r.To, r.From) == (dc.From, dc.To))
            && sheet.Controls.All(c => c.IsThrottle || !r.State.Controls.ContainsKey(c.Id))
        );

    private static string Needs(ReadingSpec spec) =>
        spec.Quantity == Quantity.InsulationOhms ? "insulation tester, 500 V DC for 1 minute"
        : spec.Quantity == Quantity.Watts ? "power meter in the mains lead"
        : spec.State.Loads.Length > 0 ? $"meter, load of {ValueText.Plain(spec.State.Loads[0].Ohms)} Ω"
        : "meter";

    /// <summary>Of each post that is read with no load and with one: how far it drops.</summary>
    private static IEnumerable<BenchTest> Regulations(List<BenchTest> readings) =>
        from idle in readings
        where idle.Sort == TestSort.NoLoadVolts
        let loaded = readings.Where(r => r.Sort == TestSort.LoadedVolts && IsSamePost(r.Offer!.Spec, idle.Offer!.Spec)).ToList()
        where loaded.Count > 0
        select new BenchTest(
            $"regulation-{idle.Offer!.Spec.Id}",
            TestSort.Regulation,
            $"{idle.Title.Split(',')[0]}: drop of its volts to 5 A",
            0,
            "worked out from its readings",
            "",
            ""
        )
        {
            Pair = [idle.Offer!, .. loaded.Select(l => l.Offer!)],
        };

    private static bool IsSamePost(ReadingSpec a, ReadingSpec b) =>
        ((a.From, a.To) == (b.From, b.To) || (a.From, a.To) == (b.To, b.From))
        && a.State.Controls.Count == b.State.Controls.Count
        && a.State.Controls.All(c => b.State.Controls.TryGetValue(c.Key, out var at) && at == c.Value);
}
