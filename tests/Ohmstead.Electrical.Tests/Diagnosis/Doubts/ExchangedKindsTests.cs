using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>Which two readings may have been noted in each other's place: only those of one quantity, and never one and the same.</summary>
public class ExchangedKindsTests
{
    private static readonly BenchUnit Unit = Bench();

    private static IEnumerable<string> Exchanged(params (string Id, double Value)[] noted)
    {
        var result = Diagnoser.Run(
            Unit.Model,
            WireBench.Unit(Unit, [.. noted.Select(n => WireBench.Value(Unit, n.Id, n.Value))]),
            new DiagnosisOptions
            {
                RankNext = false,
                IsBenchAsNoted = true,
                WrongReadingChance = 0.02,
                Threads = 1,
            }
        );
        return result
            .Slips.Where(s => s.Kind == SlipKind.Exchanged)
            .Select(s => FormattableString.Invariant($"{s.Id} {s.With} {s.Meant}"))
            .Order(StringComparer.Ordinal);
    }

    [Fact]
    public void Ohms_and_ohms_are_exchanged() =>
        Assert.Equal(["fifteen five 15", "five fifteen 5"], Exchanged(("five", 15), ("fifteen", 5), ("volts", 12)));

    /// <summary>The number of the volts noted for the ohms, and of the ohms for the volts: both are wrong, and no pair.</summary>
    [Fact]
    public void Ohms_and_volts_are_not() => Assert.Empty(Exchanged(("five", 12), ("fifteen", 15), ("volts", 5)));

    /// <summary>Read twice, once right and once far off: two numbers of one reading.</summary>
    [Fact]
    public void A_reading_and_itself_are_not() => Assert.Empty(Exchanged(("five", 15), ("five", 5), ("volts", 12)));

    private static BenchUnit Bench()
    {
        object source = new
        {
            source = new
            {
                from = "a",
                to = "g",
                volts = 12,
            },
        };
        return new SheetDraft()
            .Resistor("r-five", "a", "g", 5)
            .Resistor("r-fifteen", "b", "g", 15)
            .Reading("five", "ohms", ["a", "g"])
            .Reading("fifteen", "ohms", ["b", "g"])
            .Reading("volts", "ac-volts", ["a", "g"], source)
            .Unit();
    }
}
