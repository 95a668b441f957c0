using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Searching;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>Pairs of breaks that open a path of two ways.</summary>
public class PairedBreaksTests
{
    private static (string First, string Second)[] Of(Pieces pieces)
    {
        var pairs = PairedBreaks.Of(pieces.Fitted(Members.None), pieces.Setting);
        return [.. pairs.Select(p => (p.First.Lead.Element, p.Second.Lead.Element))];
    }

    /// <summary>Two ways of two wires each: one break in either, by the product of their odds. The wire aside opens nothing.</summary>
    [Fact]
    public void The_likeliest_pair_comes_first()
    {
        var unit = WireBench
            .Parts(("a1", "p", "q", 9), ("a2", "q", "r", 2), ("b1", "p", "s", 7), ("b2", "s", "r", 4), ("aside", "x", "y", 30))
            .Reading("way", "ohms", ["p", "r"])
            .Reading("aside", "ohms", ["x", "y"])
            .Unit();
        var pieces = new Pieces(unit, [WireBench.OL(unit, "way"), WireBench.Value(unit, "aside", 0.01)]);
        Assert.Equal([("a1", "b1"), ("a1", "b2"), ("a2", "b1"), ("a2", "b2")], Of(pieces).Select(InOrder));
        var few = new Pieces(unit, [WireBench.OL(unit, "way")], options: pieces.Options with { ExactAdditions = 2 });
        Assert.Equal([("a1", "b1"), ("a1", "b2")], Of(few).Select(InOrder));
        var one = new Pieces(unit, [WireBench.OL(unit, "way")], options: pieces.Options with { MostFaults = 1 });
        Assert.Empty(Of(one));
        var sound = new Pieces(unit, [WireBench.Value(unit, "way", 0.01)]);
        Assert.Empty(Of(sound));

        static (string, string) InOrder((string First, string Second) pair) =>
            string.CompareOrdinal(pair.First, pair.Second) < 0 ? pair : (pair.Second, pair.First);
    }

    /// <summary>A thousand times the sound ohms are far, less is not.</summary>
    [Theory]
    [InlineData(1100, true)]
    [InlineData(900, false)]
    public void Far_is_a_thousand_times_the_sound_ohms(double times, bool isFar)
    {
        var draft = new SheetDraft();
        foreach (var (id, from, to, ohms) in new[] { ("one", "a", "b", 20.0), ("two", "a", "b", 20.0), ("leak", "a", "b", times * 10) })
            draft = draft.Resistor(id, from, to, ohms, ("open", id == "leak" ? 0 : 5));
        var unit = draft.Reading("way", "ohms", ["a", "b"]).Unit();
        var read = unit.ReadListed("way", "one:open", "two:open");
        Assert.Equal(isFar, Of(new Pieces(unit, [WireBench.Value(unit, "way", read)])).Length == 1);
    }

    /// <summary>Forty-five that could be paired: the forty likeliest are, 40 · 39 / 2 solutions.</summary>
    [Fact]
    public void The_forty_likeliest_are_paired()
    {
        var draft = new SheetDraft();
        for (var n = 0; n < 45; n++)
            draft = draft.Element(
                "resistor",
                FormattableString.Invariant($"r{n}"),
                FormattableString.Invariant($"n{n}"),
                FormattableString.Invariant($"n{n + 1}"),
                new
                {
                    ohms = 10 + (5 * n),
                    faults = new Dictionary<string, double>
                    {
                        ["open"] = 0,
                        ["shorted"] = 1 + n,
                        ["drifted"] = 0,
                    },
                }
            );
        var unit = draft.Reading("row", "ohms", ["n0", "n45"]).Unit();
        var pieces = new Pieces(unit, [WireBench.OL(unit, "row")]);
        Assert.Equal(45, pieces.Classes.Length);
        var (sound, before) = (pieces.Fitted(Members.None), pieces.Workers.Solved);
        Assert.Empty(PairedBreaks.Of(sound, pieces.Setting));
        Assert.Equal(40 * 39 / 2, pieces.Workers.Solved - before);
    }
}
