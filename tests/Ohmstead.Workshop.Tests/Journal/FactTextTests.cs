using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Tests.Journal;

public class FactTextTests
{
    private static readonly BenchState Bench = new(
        118.5,
        "m-1",
        "",
        ImmutableSortedDictionary<string, double>.Empty.Add("throttle-left", 0.25),
        null
    );

    public static TheoryData<Fact> Facts() =>
        [
            new TakenIn("F-1", "twin-175", "an owner", "it hums \"loudly\" <b>"),
            new SignAnswered("hums", Answer.Unsure),
            new ConditionNoted("cord", "cracked at the plug", Decision.Renew, ""),
            new BenchSet(Bench),
            new ReadingEntered("blades", Shown.Jumps(3.1, null), Bench),
            new ReadingEntered("blades", Shown.OverRange, Bench),
            new ReadingEntered("untyped-blades", Shown.OverRange, Bench) { Title = "Between the plug blades" },
            new PlateRead(120, null),
            new TerminalNamed("untyped-post-1", "A", true),
            new CarriedOver("twin-175", ImmutableSortedDictionary<string, string>.Empty.Add("untyped-blades", "blades")),
            new PracticeBegun(-7),
            new HumRecorded(HumState.Loaded, new string('d', 64), new string('e', 64), ["hum"]),
            new LayoutStated([new("post-1", "post-2", [new("motor", 2)], new(18, 20.5)), new("post-3", "post-2", [new("coil", 1)], null)]),
            new PartChanged("disc-left", PartChange.Renewed, null, ""),
            new Corrected(new Guid(7, 0, 0, new byte[8]), new Noted("right")),
            new Corrected(new Guid(7, 0, 0, new byte[8]), null),
        ];

    [Theory]
    [MemberData(nameof(Facts))]
    public void A_fact_written_and_read_is_the_same_text_again(Fact fact)
    {
        var text = FactText.Write(fact);
        var again = FactText.Read(text);
        Assert.Equal(fact.GetType(), again.GetType());
        Assert.Equal(text, FactText.Write(again));
    }

    [Theory]
    [InlineData("""{"kind":"from-the-future","x":1}""")]
    [InlineData("""{"kind":"reading","shown":5}""")]
    public void What_is_not_known_is_kept_word_for_word(string text) => Assert.Equal(text, FactText.Write(FactText.Read(text)));
}
