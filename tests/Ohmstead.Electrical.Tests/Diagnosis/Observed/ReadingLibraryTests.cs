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

    /// <summary>Seventeen wires with two faults each, sixteen faults at a time, the likelier half first: overdue in the second sixteen.</summary>
    [Fact]
    public void What_was_come_to_before_it_was_overdue_counts()
    {
        var wires = Enumerable.Range(0, 17).Select(n => (Name("w", n), Name("n", n), Name("n", n + 1), 3.0));
        var unit = WireBench.Parts([.. wires]).Reading("row", "ohms", ["n0", "n17"]).Unit();
        var (evidence, library) = (
            new Evidence(new ReadingLibrary(unit.Model), WireBench.Unit(unit, [WireBench.Value(unit, "row", 0.17)]), 1e-3),
            new ReadingLibrary(unit.Model)
        );
        var asked = 0;
        var cut = library.Rows(evidence.Set, new Workers(evidence.Set, 1), () => ++asked > 20)[0];
        Assert.Equal(16, cut.Curves.Count(c => c is not null));
        Assert.All(unit.Catalogue.Modes.Where(m => cut.Curves[m.Number] is not null), m => Assert.Equal("open", m.Mode));
        var whole = library.Rows(evidence.Set, new Workers(evidence.Set, 1), () => false)[0];
        Assert.DoesNotContain(null, whole.Curves);
        Assert.Equal((whole.Sound, whole.Shift), (cut.Sound, cut.Shift));
        Assert.Equal(whole.Slopes, cut.Slopes);
    }

    private static string Name(string of, int number) => FormattableString.Invariant($"{of}{number}");
}
