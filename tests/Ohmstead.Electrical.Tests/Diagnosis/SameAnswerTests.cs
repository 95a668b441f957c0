using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using static Ohmstead.Electrical.Tests.Diagnosis.DeadPath;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>The same readings give the same answer: work bounds the search, threads and what is remembered change nothing.</summary>
public class SameAnswerTests
{
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
        Diagnoser.Run(library, Taken with { Readings = Taken.Readings.RemoveAt(0) }, Options);
        Assert.Equal(Answer(Options), Text(Diagnoser.Run(library, Taken, Options)));
    }

    [Theory]
    [InlineData(0, 4)]
    [InlineData(1, 6)]
    public void With_its_work_done_the_search_stops_after_the_least_number_of_sets(long work, int least)
    {
        var options = Options with { MostWork = work, LeastExpanded = least, IsBenchAsNoted = true };
        var effort = Diagnoser.Run(Twin.Model, Taken, options).Effort;
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
        Diagnoser.Run(library, Taken, least);
        int Expanded(long work) => Diagnoser.Run(library, Taken, least with { MostWork = work, LeastExpanded = 1 }).Effort.SetsExpanded;
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
}
