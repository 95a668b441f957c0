using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Units;

public class UnitHistoryTests
{
    private static readonly Guid Unit = new(1, 0, 0, new byte[8]);
    private static readonly DateTimeOffset Noon = new(2026, 1, 5, 12, 0, 0, TimeSpan.Zero);

    private static Entry Line(int number, Fact fact) => new(Id(number), Unit, number, Noon.AddMinutes(number), "bench", fact);

    private static Guid Id(int number) => new(number, 1, 0, new byte[8]);

    private static ReadingEntered Read(double value) =>
        new("left-full", Shown.Number(value), BenchState.AsSheet with { SupplyVolts = 118 });

    private static double[] Values(params Entry[] journal) =>
        [.. UnitHistory.Fold(journal).CurrentReadings.Select(r => r.Fact.Shown.Value)];

    private static readonly Entry First = Line(1, new TakenIn("F-1", "twin-175", "an owner", "hums"));

    [Fact]
    public void The_bench_of_the_last_reading_is_carried_forward() =>
        Assert.Equal(118, UnitHistory.Fold([First, Line(2, Read(17.3))]).Bench.SupplyVolts);

    [Fact]
    public void A_correction_stands_in_the_place_of_what_it_corrects() =>
        Assert.Equal([18.3, 5], Values(First, Line(2, Read(17.3)), Line(3, Read(5)), Line(4, new Corrected(Id(2), Read(18.3)))));

    [Fact]
    public void What_was_taken_back_no_longer_counts_and_is_still_in_the_journal()
    {
        Entry[] journal = [First, Line(2, Read(17.3)), Line(3, new Corrected(Id(2), null))];
        Assert.Empty(Values(journal));
        Assert.Equal(3, UnitHistory.Fold(journal).Journal.Length);
    }

    [Fact]
    public void Taking_back_a_taking_back_restores_it() =>
        Assert.Equal([17.3], Values(First, Line(2, Read(17.3)), Line(3, new Corrected(Id(2), null)), Line(4, new Corrected(Id(3), null))));

    [Fact]
    public void Readings_before_a_changed_part_are_of_another_unit() =>
        Assert.Equal(
            [18],
            Values(
                First,
                Line(2, Read(17.3)),
                Line(3, new PartChanged("roller-left", PartChange.Renewed, null, "new roller")),
                Line(4, Read(18))
            )
        );

    [Fact]
    public void Photos_of_a_thing_are_its_own_each_once_in_their_order() =>
        Assert.Equal(
            ["b", "a"],
            UnitHistory
                .Fold([
                    First,
                    Line(2, new PhotoAdded("b", "", "cover")),
                    Line(3, new PhotoAdded("c", "", "cord")),
                    Line(4, new PhotoAdded("a", "", "cover")),
                    Line(5, new PhotoAdded("b", "", "cover")),
                ])
                .PhotosOf("cover")
        );
}
