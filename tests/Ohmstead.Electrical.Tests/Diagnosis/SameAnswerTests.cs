using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>The same readings give the same answer: work bounds the search, threads and what is remembered change nothing, and a clock is owned up to.</summary>
public class SameAnswerTests
{
    private static readonly BenchUnit Twin = new(Reference.Twin160);

    /// <summary>Two faults and a dead path on the sample sheet: several sets to expand.</summary>
    private static readonly UnitReadings Readings = WireBench.Unit(
        Twin,
        [
            WireBench.Value(Twin, "ohms-right", Twin.ReadListed("ohms-right") + 5),
            WireBench.Value(Twin, "ohms-left", Twin.ReadListed("ohms-left") + 2),
            WireBench.OL(Twin, "blades"),
        ]
    );

    private static readonly DiagnosisOptions Options = new() { Threads = 1 };

    [Fact]
    public void However_many_threads_share_the_work_every_digit_is_the_same()
    {
        var one = Answer(Options);
        Assert.All(new[] { 2, 3, 8 }, threads => Assert.Equal(one, Answer(Options with { Threads = threads })));
    }

    [Fact]
    public void What_is_remembered_from_other_readings_changes_no_digit()
    {
        var library = new ReadingLibrary(Twin.Model);
        Diagnoser.Run(library, Readings with { Readings = Readings.Readings.RemoveAt(0) }, Options);
        Assert.Equal(Answer(Options), Text(Diagnoser.Run(library, Readings, Options)));
    }

    [Theory]
    [InlineData(0, 4)]
    [InlineData(1, 6)]
    public void With_its_work_done_the_search_stops_after_the_least_number_of_sets(long work, int least)
    {
        var options = Options with { MostWork = work, LeastExpanded = least, IsBenchAsNoted = true };
        var effort = Diagnoser.Run(Twin.Model, Readings, options).Effort;
        Assert.Equal((SearchStop.Budget, least, true), (effort.Stop, effort.SetsExpanded, effort.IsFinished));
    }

    [Fact]
    public void Work_is_readings_solved_times_elements()
    {
        // One set past the least: the work of the sets before it is just not done, or just done.
        var least = Options with
        {
            MostWork = 0,
            LeastExpanded = 4,
            RankNext = false,
            IsBenchAsNoted = true,
        };
        var (library, elements) = (new ReadingLibrary(Twin.Model), Twin.Model.Sheet.Elements.Length);
        Diagnoser.Run(library, Readings, least);
        int Expanded(long work) => Diagnoser.Run(library, Readings, least with { MostWork = work, LeastExpanded = 1 }).Effort.SetsExpanded;
        long low = 1,
            high = 10_000_000;
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Expanded(middle) > 1 ? (low, middle) : (middle, high);
        }
        Assert.Equal(1, Expanded(low));
        Assert.Equal(2, Expanded(high));
        // The last work at which the second set is not begun is what the first took: whole solutions of the whole sheet.
        Assert.Equal(0, low % elements);
    }

    [Fact]
    public void A_guard_that_strikes_anywhere_is_owned_up_to()
    {
        var (whole, asked) = (Answer(Options), 0L);
        Answer(Options with { IsOverdue = () => ++asked < 0 });
        Assert.True(asked > 1000);
        // At whichever question it strikes: cut, and it says so.
        foreach (var share in new[] { 0, 0.01, 0.1, 0.3, 0.6, 0.9, 0.99, 1 })
        {
            var (left, last) = ((long)(share * (asked - 1)), 0L);
            var result = Diagnoser.Run(Twin.Model, Readings, Options with { IsOverdue = () => last++ == left });
            Assert.Equal((SearchStop.TimeUp, false), (result.Effort.Stop, result.Effort.IsFinished));
        }
        // One that never strikes, however slow the machine, changes nothing.
        Assert.Equal(
            whole,
            Answer(
                Options with
                {
                    IsOverdue = () =>
                    {
                        Thread.SpinWait(1000);
                        return false;
                    },
                }
            )
        );
    }

    [Fact]
    public void Struck_from_the_start_the_chances_stay_as_they_were()
    {
        var unit = WireBench.Chain(300);
        var readings = WireBench.Unit(unit, [WireBench.Value(unit, "whole", unit.ReadListed("whole") + 5)]);
        var result = Diagnoser.Run(unit.Model, readings, new DiagnosisOptions { IsOverdue = () => true });
        Assert.Equal(SearchStop.TimeUp, result.Effort.Stop);
        // Odds of 1/99 for each of two modes.
        Assert.All(result.Faults, f => Assert.Equal(1.0 / 101, f.Probability, 1e-6));
    }

    private static string Answer(DiagnosisOptions options) => Text(Diagnoser.Run(Twin.Model, Readings, options));

    /// <summary>All that an answer says, to the last bit.</summary>
    private static string Text(DiagnosisResult result) =>
        string.Join(
            '\n',
            result
                .Faults.Select(f => FormattableString.Invariant($"{f.Mode.Name} {f.Probability:R} {f.Size:R} {f.Low:R} {f.High:R}"))
                .Concat(result.Next.Select(n => FormattableString.Invariant($"{n.Spec.Id} {n.Bits:R}")))
                .Concat(result.Readings.Select(r => FormattableString.Invariant($"{r.Spec.Id} {r.Expected:R} {r.Deviation:R}")))
                .Append(
                    FormattableString.Invariant(
                        $"{result.SoundProbability:R} {result.Effort.SetsTried} {result.Effort.SetsExpanded} {result.Effort.Stop}"
                    )
                )
        );
}
