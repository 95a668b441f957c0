using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>
/// Which of the probable sets are weighed where a reading is proposed: a row of eight resistors of ten ohms, of which the first, the first two
/// and so on are shorted, so that each set shows ten ohms less than the one before.
/// </summary>
public class NextReasoningSetsTests
{
    private const int Count = 8;
    private static readonly BenchUnit Unit = Row();
    private static readonly UnitReadings Taken = WireBench.Unit(Unit, []);
    private static readonly DiagnosisResult Fresh = Diagnoser.Run(Unit.Model, Taken, new DiagnosisOptions { Threads = 1 });

    private static ImmutableArray<FaultMode> First(int shorted) =>
        [.. Enumerable.Range(0, shorted).Select(n => Unit.Catalogue.Find(FormattableString.Invariant($"r{n}:shorted"))!)];

    private static NextReason Of(params (int Shorted, double Probability)[] sets)
    {
        var result = Fresh with { Hypotheses = [.. sets.Select(s => new FaultSetProbability(First(s.Shorted), s.Probability))] };
        return new NextReasoning(Unit.Model, Taken, result).Of(result.Next.Single(n => n.Spec.Id == "row"));
    }

    private static double[] Values(NextReason reason) => [.. reason.Groups.Select(g => g.Expected.Value)];

    private static string[] Beyond(ExpectedGroup group) => [.. group.Beyond.Select(s => string.Join(' ', s.Select(m => m.Element)))];

    [Fact]
    public void The_six_most_probable_are_weighed()
    {
        var reason = Of([.. Enumerable.Range(1, Count).Select(n => (n, 0.12))]);
        Assert.Equal([70, 60, 50, 40, 30, 20], Values(reason), (a, b) => Math.Abs(a - b) < 0.5);
        Assert.True(reason.Decides);
        // The first is in all of them, and so in nobody's favor.
        Assert.Equal(["", "r1", "r1 r2", "r1 r2 r3", "r1 r2 r3 r4", "r1 r2 r3 r4 r5"], reason.Groups.SelectMany(Beyond));
        Assert.Empty(reason.Suspects);
    }

    /// <summary>From one in twenty on; the most probable one in any case.</summary>
    [Fact]
    public void What_is_improbable_is_not_weighed()
    {
        Assert.Equal([80, 60, 40], Values(Of((2, 0.4), (0, 0.1), (4, 0.05), (6, 0.049))), (a, b) => Math.Abs(a - b) < 0.5);
        var alone = Of((3, 0.04), (1, 0.03));
        Assert.Equal([50], Values(alone), (a, b) => Math.Abs(a - b) < 0.5);
        Assert.False(alone.Decides);
    }

    /// <summary>Of sets that show the same only the smallest are named, so that no set is that holds another.</summary>
    [Fact]
    public void A_set_that_holds_another_of_its_group_is_not_named()
    {
        ImmutableArray<FaultMode> With(params string[] names) => [.. names.Select(n => Unit.Catalogue.Find(n)!)];
        var result = Fresh with
        {
            Hypotheses =
            [
                new(With("r0:shorted"), 0.3),
                new(With("r0:shorted", "aside:shorted"), 0.2),
                new(With("r1:shorted"), 0.2),
                new(With("r2:shorted", "r3:shorted"), 0.2),
            ],
        };
        var reason = new NextReasoning(Unit.Model, Taken, result).Of(result.Next.Single(n => n.Spec.Id == "row"));
        Assert.Equal([70, 60], Values(reason), (a, b) => Math.Abs(a - b) < 0.5);
        Assert.Equal(["r0", "r1"], Beyond(reason.Groups[0]));
        Assert.Equal(["r2 r3"], Beyond(reason.Groups[1]));
    }

    /// <summary>With one group the likeliest three faults that would move it out of its band; none of a part that is in the set already.</summary>
    [Fact]
    public void Where_it_decides_nothing_three_faults_that_would_move_it_are_named()
    {
        var reason = Of((1, 1));
        Assert.Equal(3, reason.Suspects.Length);
        Assert.DoesNotContain(reason.Suspects, m => m.Element is "r0" or "aside");
        var likeliest = Fresh.Faults.Where(f => f.Mode.Element is not ("r0" or "aside")).Take(3).Select(f => f.Mode);
        Assert.Equal(likeliest, reason.Suspects);
        // That the first is broken would move it, too, and is likelier: but it is shorted.
        Assert.Equal("r0:open", Fresh.Faults[0].Mode.Name);
        Assert.DoesNotContain(Of((2, 1)).Suspects, m => m.Element is "r0" or "r1");
    }

    private static BenchUnit Row()
    {
        var draft = new SheetDraft();
        void Add(string id, string from, string to, double percent) =>
            draft.Element(
                "resistor",
                id,
                from,
                to,
                new
                {
                    ohms = 10,
                    spread = new { ohms = 0.001 },
                    faults = new Dictionary<string, double>
                    {
                        ["open"] = id == "r0" ? 40 : 0,
                        ["drifted"] = 0,
                        ["shorted"] = percent,
                    },
                }
            );
        for (var n = 0; n < Count; n++)
            Add(
                FormattableString.Invariant($"r{n}"),
                FormattableString.Invariant($"n{n}"),
                FormattableString.Invariant($"n{n + 1}"),
                1 + n
            );
        Add("aside", "x", "y", 20);
        return draft.Reading("row", "ohms", ["n0", FormattableString.Invariant($"n{Count}")]).Unit();
    }
}
