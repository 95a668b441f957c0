using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>What a search says on its way: counted and not timed, near to what it says in the end, and without a trace in it.</summary>
public class EarlyAnswerTests
{
    private static readonly BenchUnit Twin = new(Reference.Twin160);

    /// <summary>All ohms of four paths too high by the same: the leads, or four contacts.</summary>
    private static readonly UnitReadings LeadsOn = WireBench.Unit(
        Twin,
        [.. new[] { "ohms-left", "ohms-right", "ohms-17", "blades" }.Select(id => WireBench.Value(Twin, id, Twin.ReadListed(id) + 0.45))]
    );

    private static readonly DiagnosisOptions Short = new() { MostExpanded = 17, RankNext = false };

    [Fact]
    public void Answers_come_each_time_twice_as_many_sets_were_expanded_and_are_the_same_on_any_number_of_threads()
    {
        var (one, _) = OnTheWay(Twin, LeadsOn, Short with { Threads = 1 });
        var (two, _) = OnTheWay(Twin, LeadsOn, Short with { Threads = 2 });
        // Another bench is searched too, which nobody is shown: its sets would be counted from one again.
        Assert.Equal([8, 16], one.Select(a => a.SetsExpanded));
        Assert.Equal(one.Select(Text), two.Select(Text));
    }

    [Fact]
    public void Whether_anybody_looks_on_changes_no_digit_of_the_answer()
    {
        var (_, watched) = OnTheWay(Twin, LeadsOn, Short);
        var alone = Diagnoser.Run(Twin.Model, LeadsOn, Short);
        Assert.Equal(alone.Faults, watched.Faults);
        Assert.Equal((alone.SoundProbability, alone.Effort), (watched.SoundProbability, watched.Effort));
    }

    /// <summary>
    /// Three paths of eight wires each, one reading for each path: what is wrong in the first is one poor wire of eight, which no reading tells
    /// apart. With so few faults nearly all sets are known by then, and what is left of the search moves little (no source).
    /// </summary>
    [Fact]
    public void Where_few_faults_could_be_there_it_is_near_the_last_and_faults_that_do_the_same_stand_together()
    {
        var wires = Enumerable.Range(0, 24).Select(n => (Name("w", n), Name("n", n), Name("n", n + 1), 1.0));
        var unit = WireBench
            .Parts([.. wires])
            .Reading("first", "ohms", ["n0", "n8"])
            .Reading("second", "ohms", ["n8", "n16"])
            .Reading("third", "ohms", ["n16", "n24"])
            .Unit();
        var (early, last) = OnTheWay(
            unit,
            WireBench.Unit(
                unit,
                [
                    WireBench.Value(unit, "first", unit.ReadListed("first") + 5),
                    WireBench.Value(unit, "second", unit.ReadListed("second")),
                    WireBench.Value(unit, "third", unit.ReadListed("third")),
                ]
            ),
            new DiagnosisOptions { IsBenchAsNoted = true, RankNext = false }
        );
        var first = early[0].Findings[0];
        Assert.Equal(Enumerable.Range(0, 8).Select(n => Name("w", n) + ":resistive"), first.Modes.Select(m => m.Name).Order());
        Assert.Equal(early[0].Findings.OrderByDescending(f => f.Probability), early[0].Findings);
        foreach (var finding in early[0].Findings)
            Assert.Equal(
                last.Faults.Where(f => finding.Modes.Any(m => m.Name == f.Mode.Name)).Sum(f => f.Probability),
                finding.Probability,
                0.02
            );
    }

    private static string Name(string of, int number) => FormattableString.Invariant($"{of}{number}");

    private static (List<EarlyAnswer> Early, DiagnosisResult Last) OnTheWay(BenchUnit unit, UnitReadings readings, DiagnosisOptions options)
    {
        var early = new List<EarlyAnswer>();
        return (early, Diagnoser.Run(unit.Model, readings, options with { Early = early.Add }));
    }

    private static string Text(EarlyAnswer answer) =>
        string.Join(
            '\n',
            answer.Findings.Select(f => FormattableString.Invariant($"{string.Join(',', f.Modes.Select(m => m.Name))} {f.Probability:R}"))
        );
}
