using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Tests.Asking;

/// <summary>Throttles that differ: what was said of one is written for that one, and for no other.</summary>
public sealed class UnlikeThrottlesTests
{
    private static readonly ThrottleAnswer Roller = new()
    {
        Post = "A",
        Return = "U",
        Low = "6",
        Full = "18",
        Runs = "roller",
        Output = "ac",
    };

    private static readonly ThrottleAnswer Wire = Roller with { Post = "D", Low = "", Full = "20", Ohms = "30", Runs = "rheostat" };

    private static readonly ThrottleAnswer Stepped = Roller with { Post = "D", Low = "", Full = "", Steps = "6 9 12 15", Runs = "steps" };

    private static KindAnswers Of(params ThrottleAnswer[] throttles) =>
        AskedUnits.Unlike with
        {
            Throttles = [.. throttles],
            Posts = [],
            Range = "none",
            Whistle = "none",
            Direction = "none",
            Named = ["A", "B", "U"],
        };

    private static AnswerProblem FirstProblem(KindAnswers answers) => TypeDraft.Read(answers, AskedUnits.Id).Problems[0];

    [Fact]
    public void Volts_of_the_winding_are_those_said_at_the_throttle_with_the_wire()
    {
        const string said = """{"block":"winding","id":"main","from":"U","volts":20}""";
        Assert.Equal(said, AskedUnits.Blocks(Of(Roller, Wire))[0]);
        Assert.Equal(said, AskedUnits.Blocks(Of(Wire with { Post = "E", Full = " " }, Wire))[0]);
        Assert.Equal("""{"block":"winding","id":"main","from":"U"}""", AskedUnits.Blocks(Of(Roller, Stepped))[0]);
        Assert.Equal("posts-2", FirstProblem(Of(Roller, Wire with { Full = "much" })).Question);
        Assert.Equal("posts-2", FirstProblem(Of(Roller, Wire with { Full = "900" })).Question);
        Assert.Empty(TypeDraft.Read(Of(Roller, Wire), AskedUnits.Id).Problems);
    }

    [Fact]
    public void Each_range_lever_adds_its_own_volts()
    {
        var differ = Of(Roller with { Range = "each", RangeVolts = "3" }, Stepped with { Range = "each", RangeVolts = "5" }) with
        {
            Range = KindAnswers.Differ,
            RangeVolts = "9",
        };
        string[] Levers(KindAnswers a) => [.. AskedUnits.Blocks(a).Where(b => b.Contains("\"range\"", StringComparison.Ordinal))];
        Assert.Equal(["""{"block":"range","throttle":"a","boost":3}""", """{"block":"range","throttle":"d","boost":5}"""], Levers(differ));
        Assert.Equal(
            ["""{"block":"range","throttle":"a","boost":9}""", """{"block":"range","throttle":"d","boost":9}"""],
            Levers(differ with { Range = "each" })
        );
        Assert.Equal("range-2", FirstProblem(differ.With(1, differ.Throttle(1) with { RangeVolts = "some" })).Question);
    }

    [Fact]
    public void The_change_link_of_a_number_leads_to_its_own_throttle()
    {
        var (kinds, asked, problems) = TypeDraft.Read(Of(Stepped with { Post = "C" }, Roller), AskedUnits.Id);
        Assert.Empty(problems);
        var drafted = TypeDraft.Run(kinds!, asked, 1, [], UsualShop.Make(), new DiagnosisOptions());
        Assert.Equal("posts-2", TypeNumbers.Of(drafted.Sheet, drafted.Made).Single(n => n.Name == "Throttle A, full").Question);
    }

    [Fact]
    public void Volts_are_proposed_from_a_throttle_that_runs_on_the_same_only()
    {
        var other = CarriedAnswers.Proposed(Of(Roller, new() { Runs = "steps", Output = "ac" }), "posts-2").Throttle(1);
        Assert.Equal(("B", "U", "", ""), (other.Post, other.Return, other.Low, other.Full));
        var same = CarriedAnswers.Proposed(Of(Stepped, Roller, new() { Runs = "roller", Output = "ac" }) with { Count = "3" }, "posts-3");
        Assert.Equal(("6", "18", ""), (same.Throttle(2).Low, same.Throttle(2).Full, same.Throttle(2).Steps));
    }

    [Fact]
    public void Posts_are_proposed_where_AC_comes_out_and_nowhere_else()
    {
        var direct = new ThrottleAnswer { Runs = "roller", Output = "bridge" };
        var behind = CarriedAnswers.Proposed(Of(direct, Roller with { Post = "", Return = "", Low = "", Full = "" }), "posts-2");
        Assert.Equal(("A", "U"), (behind.Throttle(1).Post, behind.Throttle(1).Return));
        var second = CarriedAnswers.Proposed(Of(Roller, direct), "posts-2").Throttle(1);
        Assert.Equal(("", "", "18"), (second.Post, second.Return, second.Full));
    }

    [Theory]
    [InlineData("roller", "D and U, 6 V low, 18 V full")]
    [InlineData("steps", "D and U, 6 9")]
    [InlineData("rheostat", "D and U, 18 V full, 30 Ω")]
    public void An_answer_is_shown_by_what_its_throttle_runs_on(string runs, string said) =>
        Assert.Equal(said, KindQuestions.Said(Of(Roller, Wire with { Runs = runs, Low = "6", Full = "18", Steps = "6 9" }), "posts-2"));

    [Fact]
    public void A_reversing_switch_for_all_is_offered_where_all_give_DC()
    {
        static bool IsOffered(KindAnswers a, string key) => KindQuestions.Ask(a, key).Choices.Any(c => c.Word == "reverses");
        Assert.False(IsOffered(AskedUnits.Unlike, "direction"));
        Assert.True(IsOffered(AskedUnits.Unlike, "direction-2"));
        Assert.False(IsOffered(AskedUnits.Unlike, "direction-1"));
        Assert.True(IsOffered(AskedUnits.Direct, "direction"));
        // Chosen while all gave DC: what is wrong now is the choice.
        var problem = FirstProblem(AskedUnits.Unlike with { Direction = "reverses" });
        Assert.Equal(
            ("direction", "A reversing switch needs DC, and one throttle gives AC. Choose again."),
            (problem.Question, problem.Words)
        );
    }

    /// <summary>The second throttle gives DC, and a whistle needs AC: there is one.</summary>
    [Fact]
    public void A_whistle_beside_DC_is_the_only_one()
    {
        var one = AskedUnits.Unlike with { WhistleFrom = KindAnswers.Unknown };
        Assert.Contains("a reading settles it", KindQuestions.Ask(one, KindQuestions.WhistleFrom).DontKnow, StringComparison.Ordinal);
        Assert.Contains("""{"block":"whistle","throttle":"a","from":"unknown"}""", AskedUnits.Blocks(one));
    }
}
