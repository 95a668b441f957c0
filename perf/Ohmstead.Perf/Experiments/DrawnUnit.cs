using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments.Benches;

namespace Ohmstead.Perf.Experiments;

/// <summary>A unit drawn by the sheet's spread and chances, and what a meter shows on it.</summary>
/// <param name="Truth">The faults of the catalogue that it has, by name.</param>
internal sealed record DrawnUnit(ImmutableHashSet<string> Truth, UnitReadings Readings)
{
    /// <summary>The meter of the twelve cases.</summary>
    public static Meter CaseMeter { get; } =
        new(
            new Dictionary<Quantity, MeterError>
            {
                [Quantity.Ohms] = new(0.8, 0.05, 0, 0),
                [Quantity.InsulationOhms] = new(5, 20e3, 0, 0),
                [Quantity.AcVolts] = new(0.8, 0.03, 0, 0),
                [Quantity.DcVolts] = new(0.5, 0.02, 0, 0),
                [Quantity.AcAmps] = new(1.5, 0.01, 0, 0),
                [Quantity.Watts] = new(1.5, 0.4, 0, 0),
            }.ToImmutableDictionary()
        );

    private const double ExpectedFaults = 2;

    /// <summary>Tells the dice of the bench from those of the unit, so that one unit can stand on several benches.</summary>
    private const int BenchSeed = 0x5f01;

    /// <summary>The faults with their sizes.</summary>
    public ImmutableArray<Fault> Faults { get; init; } = [];

    /// <summary>What the line really gave, however it is noted [V].</summary>
    public double LineVolts { get; init; }

    /// <summary>The fault that no catalogue lists, if it has one.</summary>
    public UnlistedFault? Unlisted { get; init; }

    /// <summary>Readings that were noted or taken wrongly.</summary>
    public ImmutableArray<TrueSlip> Slips { get; init; } = [];

    /// <param name="share">Share of the readings that were taken [0..1].</param>
    /// <param name="atNominal">The line gives exactly the sheet's volts, and every reading is taken.</param>
    /// <param name="bench">How the bench differs from what is noted; null for not at all.</param>
    public static DrawnUnit Draw(UnitModel model, int seed, double share = 1, bool atNominal = false, Bench? bench = null)
    {
        bench ??= Bench.AsNoted;
        var (dice, benchDice) = (new Random(seed), new Random(seed ^ BenchSeed));
        var faults = DrawFaults(new FaultCatalogue(model), dice);
        var unlisted = bench.HasUnlisted ? UnlistedFaults.Draw(model, seed, benchDice) : null;
        if (unlisted is not null)
            faults = [.. faults.Where(f => f.Mode.Element != unlisted.Element), .. unlisted.Faults];
        var sheet = bench.TrueType(unlisted?.Sheet ?? model.Sheet, benchDice);
        var type = ReferenceEquals(sheet, model.Sheet) ? model : new UnitModel(sheet);
        var values = type.Nominal.Copy();
        foreach (var p in type.Parameters)
            values.Scale(p, Math.Exp(bench.SpreadTimes * p.Sigma * Gauss(dice)));
        foreach (var f in faults)
            f.ApplyTo(values);
        var ratio = atNominal ? 1 : 0.95 + (0.1 * dice.NextDouble());
        var off = bench.LineOffAt(sheet.SupplyVolts) * (benchDice.Next(2) == 0 ? 1 : -1);
        var on = new ReadingBench(type, faults, values, CaseMeter, bench);
        ReadingState TrueState(ReadingSpec spec) =>
            spec.State.Source is { IsDirect: false } s ? WithVolts(spec.State, Math.Round(s.Volts * ratio, 2)) : spec.State;
        var taken = new List<TakenReading>();
        foreach (var spec in model.Sheet.Readings)
        {
            var state = TrueState(spec);
            var shown = on.Show(spec, state, dice);
            var isLeftOut = spec.IsOpenCase && dice.NextDouble() < 0.5 && !atNominal;
            if (isLeftOut || dice.NextDouble() > share || shown is not { } value || (bench.IsCold && Bench.IsMains(state)))
                continue;
            var said = Bench.IsMains(state) ? WithVolts(state, state.Source!.Volts + off) : state;
            taken.Add(ReadingBench.Noted(spec, value, said));
        }
        var slips = new Slips(on, TrueState, benchDice);
        TakenReading[] noted = [.. taken];
        if (bench.SlipShare > 0)
            slips.Spoil(noted, bench.SlipShare);
        var line = Math.Round(model.Sheet.SupplyVolts * ratio, 2);
        return new DrawnUnit(
            [.. faults.Select(f => f.Mode.Name)],
            new UnitReadings(model.Sheet.Id, line + off, ExpectedFaults, CaseMeter, [.. noted], [])
        )
        {
            LineVolts = line,
            Faults = [.. faults],
            Unlisted = unlisted,
            Slips = [.. slips.All],
        };
    }

    private static ReadingState WithVolts(ReadingState state, double volts) => state with { Source = state.Source! with { Volts = volts } };

    private static Fault[] DrawFaults(FaultCatalogue catalogue, Random dice)
    {
        var chances = catalogue.Chances(catalogue.Odds(ExpectedFaults));
        var faults = new List<Fault>();
        foreach (var modes in catalogue.Modes.GroupBy(m => catalogue.ElementOf[m.Number]))
        {
            var u = dice.NextDouble();
            foreach (var m in modes)
            {
                u -= chances[m.Number];
                if (u >= 0)
                    continue;
                faults.Add(
                    new Fault(
                        m,
                        m is { Kind: ElementKind.Winding, Mode: "open" } ? 0
                            : m.Size == SizeKind.None ? 0
                            : m.SizeAt(dice.NextDouble())
                    )
                );
                break;
            }
        }
        return [.. faults];
    }

    private static double Gauss(Random dice) => Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
}
