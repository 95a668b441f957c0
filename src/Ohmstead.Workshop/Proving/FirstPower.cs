using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Proving;

/// <summary>Mains for the first time: which series lamp, what it leaves on the unit, and the way up step by step.</summary>
public static class FirstPower
{
    /// <summary>From here on a fault that the readings point to is one that a lamp should show [probability].</summary>
    private const double WorthShowing = 0.05;

    private const int MostShown = 3;

    /// <summary>A lamp for less than this share of the line burns out on a short.</summary>
    private const double LeastLampVolts = 0.9;

    /// <summary>A lamp for more than this share of the line is one of another line: it hardly glows on a short.</summary>
    private const double MostLampVolts = 1.15;

    /// <summary>A lamp that lets more than this through on a short no longer guards a cord [A]. Common practice, no source.</summary>
    private const double MostLampAmps = 2.5;

    /// <summary>What has to be so before the switch, each a line; the cautions of the table come after them.</summary>
    public static ImmutableArray<string> Rules { get; } =
    [
        "Cover on. Nothing on the posts. Throttles low. A second person in the room.",
        "Use a filament lamp in series. No LED, no fluorescent lamp, no electronic supply.",
        "Read at the fixed terminals of the lamp box, never on a live plug.",
        "To stop, switch off at the wall or the strip. Hands away from the unit.",
        .. CautionTable.ForAny([Act.SeriesLamp, Act.BringUp], [""]),
    ];

    /// <summary>The sheet's reading with a lamp in series; null when it has none.</summary>
    public static ReadingSpec? LampReading(TypeSheet sheet) =>
        sheet.Readings.FirstOrDefault(r => r is { Quantity: Quantity.AcVolts, State.Source: { HasLamp: true, Volts: > 30 } });

    /// <summary>
    /// True when the line may come up: the lamp check as every mains reading behind it sees it; where none needs it, the lamp's own reading
    /// is open, was taken, is within its limits and not doubted.
    /// </summary>
    public static bool LampPassed(ReadingSpec lamp, IReadOnlyCollection<ReadingOffer> offers, UnitReadings readings) =>
        offers.FirstOrDefault(o => o.Spec.Needs.Contains(lamp.Id)) is { } behind
            ? behind.IsOpen
            : offers.FirstOrDefault(o => o.Spec.Id == lamp.Id) is { IsOpen: true, IsMeasured: true } && Gates.Stands(readings, lamp);

    /// <summary>
    /// The filament lamps of the shop, best first: the one that leaves a sound unit's volts farthest from those of each fault,
    /// counted in half widths of the sound band.
    /// </summary>
    /// <param name="faults">The faults to tell from a sound unit.</param>
    public static ImmutableArray<LampChoice> Lamps(
        UnitModel model,
        Shop shop,
        double lineVolts,
        IReadOnlyList<FaultMode> faults,
        Meter meter
    )
    {
        if (LampReading(model.Sheet) is not { } spec)
            return [];
        var weighed = LampsOf(shop, lineVolts).Select(l => Weigh(model, spec, l, lineVolts, faults, meter)).ToList();
        // A fault that none of the lamps can show speaks for none of them.
        var told = Enumerable.Range(0, faults.Count).Where(f => weighed.Exists(l => l.ApartOf(f) >= 1)).ToList();
        return [.. weighed.OrderByDescending(l => told.Select(l.ApartOf).DefaultIfEmpty(0).Min())];
    }

    /// <summary>What a lamp is rated for [W].</summary>
    public static double Watts(ShopLoad lamp) => lamp.Volts * lamp.Amps;

    /// <summary>The filament lamps of the shop that the line may be put through.</summary>
    public static IEnumerable<ShopLoad> LampsOf(Shop shop, double lineVolts) => shop.Loads.Where(l => IsForLine(l, lineVolts));

    /// <summary>The usual lamps for a line, and those of it that the shop entered by hand.</summary>
    public static IEnumerable<ShopLoad> LampsToAskFor(Shop shop, double lineVolts) =>
        UsualShop.LampsFor(lineVolts).Concat(LampsOf(shop, lineVolts)).DistinctBy(l => l.Id);

    /// <summary>True for a series lamp that a line may be put through: made for that line, and no more than a cord bears.</summary>
    public static bool IsForLine(ShopLoad lamp, double lineVolts) =>
        lamp is { Volts: > 0, Amps: > 0 and <= MostLampAmps }
        && lamp.Volts >= LeastLampVolts * lineVolts
        && lamp.Volts <= MostLampVolts * lineVolts;

    /// <summary>The faults that first power is there for: the two windings of most turns shorted in part, the first of them open.</summary>
    public static ImmutableArray<FaultMode> UsualFaults(UnitModel model)
    {
        var windings = model.Sheet.Windings.OrderByDescending(w => w.Turns).Take(2).Select(w => w.Id).ToList();
        return
        [
            .. new FaultCatalogue(model).Modes.Where(m =>
                (m.Mode == "shorted-turns" && windings.Contains(m.Element)) || (m.Mode == "open" && windings.FirstOrDefault() == m.Element)
            ),
        ];
    }

    /// <summary>The usual ones, and those that the readings make most probable: what a lamp is to tell from a sound unit.</summary>
    /// <param name="result">What the readings say; null where nothing is worked out yet.</param>
    public static ImmutableArray<FaultMode> FaultsToShow(UnitModel model, DiagnosisResult? result) =>
        [
            .. UsualFaults(model)
                .Concat((result?.Faults ?? []).Where(f => f.Probability >= WorthShowing).Take(MostShown).Select(f => f.Mode))
                .DistinctBy(m => m.Name),
        ];

    /// <summary>The step that is next on the way up: the first that did not go; null when all went.</summary>
    public static double? NextStep(IEnumerable<double> steps, ImmutableDictionary<double, PowerTried> tried) =>
        steps.Cast<double?>().FirstOrDefault(v => !(tried.TryGetValue(v!.Value, out var t) && t.Went));

    /// <summary>The volts of the way up: a fifth of the line at a time.</summary>
    public static ImmutableArray<double> Steps(double lineVolts) => [.. Enumerable.Range(1, 5).Select(n => Math.Round(lineVolts * n / 5))];

    /// <summary>What a sound unit takes at a step of the way up.</summary>
    public static (double Volts, Expectation Amps, Expectation Watts) StepOf(UnitModel model, double volts, Meter meter)
    {
        Expectation Band(ReadingSpec spec) => Expectation.Of(model, spec, spec.State, meter);
        return (volts, Band(Step(model.Sheet, Quantity.AcAmps, volts)), Band(Step(model.Sheet, Quantity.Watts, volts)));
    }

    /// <summary>The reading of amps or watts with so many volts on the plug and nothing connected.</summary>
    public static ReadingSpec Step(TypeSheet sheet, Quantity quantity, double volts)
    {
        var source = LampReading(sheet)?.State.Source ?? sheet.Readings.First(r => BenchConditions.IsOnMains(sheet, r)).State.Source!;
        var name = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{ReadingReader.NameOf(quantity)} at {volts} V");
        return new ReadingSpec(
            name,
            name,
            quantity,
            "",
            "",
            new ReadingState(
                new SourceSpec(source.From, source.To, volts, 0, 0, 0, 0),
                ImmutableDictionary<string, ControlPosition>.Empty,
                [],
                [],
                [],
                20
            ),
            1,
            ReadingSpec.Closed,
            [],
            null,
            false,
            ""
        );
    }

    /// <summary>Go or stop: it is a stop when either is above what a sound unit draws; what is not read counts as not above.</summary>
    public static (PowerTried? Fact, string Refused, string Words) Try(
        double volts,
        string amps,
        string watts,
        Expectation ofAmps,
        Expectation ofWatts
    )
    {
        var (a, ampsProblem) = Read(amps, 200, Quantity.AcAmps);
        var (w, wattsProblem) = Read(watts, 1e5, Quantity.Watts);
        if (ampsProblem.Length > 0)
            return (null, $"Amps: {ampsProblem}", "");
        if (wattsProblem.Length > 0)
            return (null, $"Watts: {wattsProblem}", "");
        if (a is null && w is null)
            return (null, "Enter the amps, the watts or both.", "");
        var isOver = IsOver(a, ofAmps) || IsOver(w, ofWatts);
        return (new PowerTried(volts, a, w, !isOver), "", isOver ? "Stop" : "Go");
    }

    /// <summary>What was tried since the circuit was last changed, by its volts; the last try of each counts.</summary>
    public static ImmutableDictionary<double, PowerTried> Tried(BenchUnit unit) =>
        unit.All<PowerTried>()
            .Where(p => p.Entry.Number > unit.LastChange)
            .GroupBy(p => p.Fact.SetVolts)
            .ToImmutableDictionary(g => g.Key, g => g.Last().Fact);

    /// <summary>Against the band's own end, also where nothing may be concluded about faults: to stop is never too much.</summary>
    private static bool IsOver(double? value, Expectation band) => value is { } v && v > band.High;

    private static (double? Value, string Problem) Read(string text, double most, Quantity quantity)
    {
        if (text.Trim().Length == 0)
            return (null, "");
        var number = NumberText.Read(text, quantity);
        return number.Problem.Length > 0 ? (null, number.Problem)
            : number.Value < 0 || number.Value > most ? (null, $"{ValueText.Of(number.Value, quantity)} is not possible here.")
            : (number.Value, "");
    }

    private static LampChoice Weigh(
        UnitModel model,
        ReadingSpec spec,
        ShopLoad lamp,
        double lineVolts,
        IReadOnlyList<FaultMode> faults,
        Meter meter
    )
    {
        var state = spec.State with
        {
            Source = spec.State.Source! with { Volts = lineVolts, LampVolts = lamp.Volts, LampAmps = lamp.Amps },
        };
        var sound = Expectation.Of(model, spec, state, meter);
        var with = faults
            .Select(m => (m, Volts: ValueWith(model, spec, state, m, meter)))
            .Where(w => w.Volts.HasValue)
            .Select(w => (w.m, w.Volts.GetValueOrDefault()))
            .ToImmutableArray();
        var asked = spec.State.Source!;
        return new LampChoice(
            lamp,
            sound,
            with,
            Math.Abs((lamp.Volts / asked.LampVolts) - 1) < 0.05 && Math.Abs((lamp.Amps / asked.LampAmps) - 1) < 0.05
        );
    }

    /// <summary>Null where it cannot be solved.</summary>
    private static double? ValueWith(UnitModel model, ReadingSpec spec, ReadingState state, FaultMode mode, Meter meter)
    {
        var fault = new Fault(mode, mode.MiddleSize);
        var values = model.Nominal.Copy();
        fault.ApplyTo(values);
        return new ReadingSolver().Solve(new FaultedCircuits(model, spec, state).For([fault]), values, meter.IsAveraging).Value;
    }
}

/// <summary>A lamp of the shop in series with the unit.</summary>
/// <param name="Sound">Volts left on a sound unit.</param>
/// <param name="With">Volts left with each of the faults, of middling size.</param>
/// <param name="IsSheets">True for the lamp that the sheet's own reading asks for.</param>
public sealed record LampChoice(ShopLoad Lamp, Expectation Sound, ImmutableArray<(FaultMode Fault, double Volts)> With, bool IsSheets)
{
    /// <summary>The faults that it shows: they lie out of the sound band.</summary>
    public IEnumerable<(FaultMode Fault, double Volts)> Shows => With.Where((_, f) => ApartOf(f) >= 1);

    /// <summary>How far a fault lies from a sound unit, in half widths of the sound band.</summary>
    public double ApartOf(int fault) => Math.Abs(With[fault].Volts - Sound.Value) / Math.Max((Sound.High - Sound.Low) / 2, 0.1);
}
