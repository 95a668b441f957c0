using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Diagnosis.WireBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Ranking;

/// <summary>The order of what is proposed, and what a check is worth for what waits behind it.</summary>
public class NextOrderTests
{
    /// <summary>
    /// Volts of the line on an open unit come after all that can be read cold, however much they say, and before what cannot be read yet,
    /// however much that would say.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(100)]
    public void Mains_on_an_open_unit_comes_after_what_is_safer_and_before_what_must_wait(double minutesOfTheLive)
    {
        var sheet = Parts(("w1", "a", "b", 4), ("w2", "c", "d", 9), ("w3", "e", "g", 12))
            .Resistor("load", "f", "e", 100)
            .Reading("cold", "ohms", ["a", "b"])
            .Reading("waits", "ohms", ["c", "d"])
            .Reading(
                "live",
                "ac-volts",
                ["f", "e"],
                new
                {
                    source = new
                    {
                        from = "f",
                        to = "g",
                        volts = 120,
                    },
                },
                minutesOfTheLive
            )
            .Sheet();
        var unit = new BenchUnit(
            sheet with
            {
                TakeApart = [Reference.Twin160.TakeApart[0] with { Id = "cover", After = [], AfterAny = [], MinutesOut = 0 }],
                Readings =
                [
                    sheet.Readings[0] with
                    {
                        Limits = new(0, 1),
                        Minutes = 50,
                    },
                    sheet.Readings[1] with
                    {
                        Needs = ["cold"],
                    },
                    sheet.Readings[2] with
                    {
                        Access = "cover",
                    },
                ],
            }
        );
        var next = Diagnoser.Run(unit.Model, WireBench.Unit(unit, []), Options).Next;
        Assert.Equal(["cold", "live", "waits"], next.Select(n => n.Spec.Id));
        Assert.Equal([0, 0, 1], next.Select(n => n.BlockedBy.Length));
        Assert.Equal([50, minutesOfTheLive, 1], next.Select(n => n.Minutes));
    }

    /// <summary>
    /// A check of ten minutes that says next to nothing itself, and eight readings of a minute behind it, each of a wire that is open by odds of 5 to
    /// 95: six of them are looked at together. Entropy of six wires of eight, no two open at once, over sixteen minutes and times ten.
    /// </summary>
    [Fact]
    public void A_check_is_worth_what_the_best_six_behind_it_tell_in_their_time()
    {
        const int behind = 8;
        var names = Enumerable.Range(0, behind).Select(n => FormattableString.Invariant($"w{n}")).ToArray();
        var draft = Parts([("gate", "x", "y", 5e-4), .. names.Select(w => (w, w + "-from", w + "-to", 5.0))])
            .Reading("check", "ohms", ["x", "y"]);
        foreach (var w in names)
            draft = draft.Reading(w, "ohms", [w + "-from", w + "-to"]);
        // Nothing but breaks: no wire is poor.
        var json = draft.Json();
        foreach (var e in json["elements"]!.AsArray())
            e!["faults"]!["resistive"] = 0;
        var sheet = TypeSheetFile.Read(json.ToJsonString()).Required;
        var unit = new BenchUnit(
            sheet with
            {
                Readings =
                [
                    sheet.Readings[0] with
                    {
                        Limits = new(0, 1),
                        Minutes = 10,
                    },
                    .. sheet.Readings[1..].Select(r => r with { Needs = ["check"] }),
                ],
            }
        );
        var next = Diagnoser.Run(unit.Model, WireBench.Unit(unit, []), Options).Next;
        var odds = 5.0 / 95;
        var open = odds / (1 + (behind * odds));
        double Entropy(int wires) => -(wires * open * Math.Log2(open)) - ((1 - (wires * open)) * Math.Log2(1 - (wires * open)));
        Assert.Equal("check", next[0].Spec.Id);
        Assert.Equal(10 * Entropy(6) / 16, next[0].Bits, 0.03);
        Assert.All(next.Skip(1), n => Assert.Equal(Entropy(1), n.Bits, 0.01));
    }

    /// <summary>A reason or a name of one letter is one.</summary>
    [Theory]
    [InlineData("", "N", false)]
    [InlineData("?", "", false)]
    [InlineData("", "", true)]
    public void What_was_waived_by_initials_is_not_proposed_again(string why, string by, bool isProposed)
    {
        var unit = Parts(("w1", "a", "b", 2)).Reading("first", "ohms", ["a", "b"]).Unit();
        var waived = Value(unit, "first", 0) with { Outcome = Outcome.NotTaken, Why = why, WaivedBy = by };
        Assert.Equal(isProposed, Diagnoser.Run(unit.Model, WireBench.Unit(unit, [waived]), Options).Next.Length == 1);
    }

    private static readonly DiagnosisOptions Options = new() { IsBenchAsNoted = true, Threads = 1 };
}
