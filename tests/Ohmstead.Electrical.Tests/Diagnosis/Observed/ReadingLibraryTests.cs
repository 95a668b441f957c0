using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>What is known of a unit's readings before anything is read is worked out once, also when it is broken off on the way.</summary>
public class ReadingLibraryTests
{
    private static readonly BenchUnit Unit = new(Reference.Twin160);

    private static readonly Evidence AllRead = new(
        new ReadingLibrary(Unit.Model),
        WireBench.Unit(Unit, [.. Unit.Model.Sheet.Readings.Select(r => WireBench.OL(Unit, r.Id))]),
        1e-3
    );

    private static (ReadingRow[] Rows, long Solved) Ask(ReadingLibrary library, Func<bool> isOverdue)
    {
        var workers = new Workers(AllRead.Set, 1);
        return (library.Rows(AllRead.Set, workers, isOverdue), workers.Solved);
    }

    [Fact]
    public void What_was_broken_off_goes_on_where_it_was()
    {
        var (whole, all) = Ask(new ReadingLibrary(Unit.Model), () => false);
        var library = new ReadingLibrary(Unit.Model);
        var asked = 0;
        var (cut, first) = Ask(library, () => asked++ > 2 * AllRead.Set.Count);
        var (rest, second) = Ask(library, () => false);
        Assert.InRange(first, all / 20, all * 19 / 20);
        Assert.Equal(all, first + second);
        Assert.Equal(0, Ask(library, () => false).Solved);
        for (var r = 0; r < whole.Length; r++)
        {
            Assert.Equal(whole[r].Sound, rest[r].Sound);
            Assert.Equal(whole[r].Slopes, rest[r].Slopes);
            Assert.Equal(whole[r].Curves, rest[r].Curves);
            // A fault that was not come to moves no reading; one that was, moves all that it moves.
            Assert.All(
                Enumerable.Range(0, Unit.Catalogue.Modes.Length),
                m => Assert.True(cut.All(row => row.Curves[m] is null) || (cut[r].Curves[m] is null) == (whole[r].Curves[m] is null))
            );
        }
    }
}
