using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
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
}
