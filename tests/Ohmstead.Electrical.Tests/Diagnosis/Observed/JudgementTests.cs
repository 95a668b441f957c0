using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>A judgement is its holder's: what it says hangs on its own prediction only.</summary>
public class JudgementTests
{
    private readonly Evidence evidence;
    private readonly double[] sound;
    private readonly Judge judge;

    public JudgementTests()
    {
        // Two resistors; the second reads four times what it is nominally, so at its nominal value it is left out as wrong.
        var unit = new SheetDraft()
            .Element("resistor", "one", "a", "g", new { ohms = 10.0, spread = new { ohms = 0.05 } })
            .Element("resistor", "two", "b", "g", new { ohms = 20.0, spread = new { ohms = 0.05 } })
            .Reading("one", "ohms", ["a", "g"])
            .Reading("two", "ohms", ["b", "g"])
            .Unit();
        double[] read = [10.5, 80];
        var taken = unit.Model.Sheet.Readings.Select((r, n) => new TakenReading(r, Outcome.Value, read[n], [], "", "", r.State));
        var library = new ReadingLibrary(unit.Model);
        evidence = new Evidence(library, new UnitReadings("draft", 120, null, Meter.Usual, [.. taken], []), 0.02);
        var workers = new Workers(evidence.Set, 1);
        var rows = library.Rows(evidence.Set, workers, () => false);
        sound = [.. rows.Select(r => r.Sound)];
        judge = new Judge(evidence, new SpreadModel(evidence, rows, workers).Of(Members.None, sound), new Worker(evidence.Set));
    }

    /// <summary>The prediction that has the second reading as it was read.</summary>
    private double[] Near => [sound[0], evidence.Measured(1)];

    [Fact]
    public void What_is_judged_meanwhile_by_the_same_worker_changes_nothing_in_it()
    {
        using var held = judge.At(sound);
        var before = Told(held);
        using var other = judge.At(Near);
        Assert.Equal(before, Told(held));
        Assert.Equal([1], held.LeftOut());
        Assert.Empty(other.LeftOut());
        Assert.True(other.Log > held.Log + 5);
    }

    [Fact]
    public void Once_it_is_disposed_of_it_says_nothing_more()
    {
        var judged = judge.At(Near);
        judged.Dispose();
        Assert.Throws<ObjectDisposedException>(() => judged.LeftOut());
    }

    [Fact]
    public void Disposed_of_twice_it_is_not_handed_to_two_holders()
    {
        var judged = judge.At(Near);
        judged.Dispose();
        judged.Dispose();
        using var one = judge.At(Near);
        using var two = judge.At(Near);
        Assert.NotSame(one, two);
    }

    private static double[] Told(Judgement judged)
    {
        var (means, deviations) = judged.Parameters();
        var (gradient, curvature) = (new double[1], new double[1]);
        judged.Project(
            [
                [1, 1],
            ],
            gradient,
            curvature
        );
        return
        [
            judged.Log,
            judged.ShareMove([1, 1], 0.5),
            judged.SlopeOfLine([0, 0], [1, 1]),
            judged.Common([1, 1]),
            .. gradient,
            .. curvature,
            .. means,
            .. deviations,
        ];
    }
}
