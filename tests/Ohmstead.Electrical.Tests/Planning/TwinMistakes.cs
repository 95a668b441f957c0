using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>The mistakes of the sample sheet and what tells them, worked out once for all tests that ask.</summary>
internal static class TwinMistakes
{
    public static TypeSheet Sheet { get; } = Reference.Twin160;

    /// <summary>The unit with the meter of the cases, and nothing read.</summary>
    public static UnitReadings Nothing { get; } = new(Sheet.Id, Sheet.SupplyVolts, null, DrawnUnit.CaseMeter, [], []);

    public static MistakeTable Table { get; } = new(Sheet, MistakeList.Of(Sheet), Nothing);

    public static Wiring SoundWiring { get; } = new(Sheet);

    public static Discrimination Plan { get; } = new(Table, SoundWiring);

    /// <summary>The places of those that can be told; of every so many one, so that a run in a hurry still sees all sorts.</summary>
    public static List<int> ThatCanBeTold(int oneIn = 1) =>
        [.. Enumerable.Range(0, Table.Mistakes.Length).Where(Plan.Discriminates).Where((_, n) => n % oneIn == 0)];

    public static RewireResult Check(TypeSheet wired, int seed, bool isNominal = false) =>
        RewireCheck.Run(Table, Plan, SoundWiring, Read(wired, seed, isNominal));

    /// <summary>A unit drawn by the sheet's spread, or nominal, read with the meter's error: the list that is asked for.</summary>
    public static UnitReadings Read(TypeSheet wired, int seed, bool isNominal)
    {
        var dice = new Random(seed);
        var model = new UnitModel(wired);
        var values = model.Nominal.Copy();
        foreach (var p in model.Parameters.Where(_ => !isNominal))
            values.Scale(
                p,
                Math.Exp(p.Sigma * Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble()))
            );
        var solver = new ReadingSolver();
        return Nothing with
        {
            Readings =
            [
                .. Plan.ShortestList()
                    .Select(t => t.Spec)
                    .Select(r =>
                    {
                        var value = solver.Solve(new FaultedCircuits(model, r, r.State).Usual, values).Value!.Value;
                        var isOpen = value > Solution.OverRange(r.Quantity);
                        var shown = value + (((2 * dice.NextDouble()) - 1) * Nothing.Meter.For(r.Quantity).LimitAt(value));
                        return new TakenReading(r, isOpen ? Outcome.OverRange : Outcome.Value, isOpen ? 0 : shown, [], "", "", r.State);
                    }),
            ],
        };
    }
}
