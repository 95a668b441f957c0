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
        var drafted = TypeDraft.Run(kinds!, asked, [], UsualShop.Make(), new DiagnosisOptions());
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

    [Fact]
    public void Each_whistle_has_the_volts_that_were_said_of_its_own_lever()
    {
        var differ = Of(
            Roller with
            {
                WhistleFrom = "own",
                WhistleVolts = "3",
            },
            Roller with
            {
                Post = "D",
                WhistleFrom = "winding",
                WhistleVolts = "6",
            }
        ) with
        {
            Whistle = "each",
            WhistleFrom = KindAnswers.Differ,
            WhistleVolts = "9",
        };
        string[] Whistles(KindAnswers a) => [.. AskedUnits.Blocks(a).Where(b => b.Contains("\"whistle\"", StringComparison.Ordinal))];
        Assert.Equal(
            [
                """{"block":"whistle","throttle":"a","boost":3,"from":"own"}""",
                """{"block":"whistle","throttle":"d","boost":6,"from":"winding"}""",
            ],
            Whistles(differ)
        );
        Assert.Equal(
            [
                """{"block":"whistle","throttle":"a","boost":9,"from":"own"}""",
                """{"block":"whistle","throttle":"d","boost":9,"from":"own"}""",
            ],
            Whistles(differ with { WhistleFrom = "own" })
        );
        Assert.Equal(
            """{"block":"whistle","throttle":"d","boost":0}""",
            Whistles(differ.With(1, differ.Throttle(1) with { WhistleFrom = KindAnswers.None }))[1]
        );
        Assert.Equal(["whistle-volts", "whistle-volts-1", "whistle-volts-2"], Asked(differ, "whistle-volts"));
        Assert.Equal("whistle-volts-2", FirstProblem(differ.With(1, differ.Throttle(1) with { WhistleVolts = "some" })).Question);
        var open = KindQuestions.Choose(differ, "whistle-volts-2", KindAnswers.Unknown);
        Assert.Equal("""{"block":"whistle","throttle":"d","boost":6,"from":"unknown"}""", Whistles(open)[1]);
        Assert.Equal("Throttle 2: where does its whistle get the volts?", KindQuestions.Ask(open, "whistle-volts-2").Title);
    }

    [Fact]
    public void One_lever_for_all_throttles_is_asked_about_once()
    {
        var each = AskedUnits.Twin;
        Assert.Contains(KindQuestions.Ask(each, KindQuestions.WhistleFrom).Choices, c => c.Word == KindAnswers.Differ);
        var shared = each with { Whistle = "shared", WhistleFrom = KindAnswers.Differ };
        Assert.DoesNotContain(KindQuestions.Ask(shared, KindQuestions.WhistleFrom).Choices, c => c.Word == KindAnswers.Differ);
        Assert.Equal(["whistle-volts"], Asked(shared, "whistle-volts"));
        Assert.Contains("""{"block":"whistle","throttle":["a","d"],"boost":5}""", AskedUnits.Blocks(shared));
    }

    [Fact]
    public void Each_rectifier_is_made_of_what_was_said_of_its_own()
    {
        var plates = Roller with { Output = "bridge", Cell = "selenium" };
        var differ = Of(plates, plates with { Output = "half", Cell = "silicon" }) with { Cell = KindAnswers.Differ };
        string[] Rectifiers(KindAnswers a) => [.. AskedUnits.Blocks(a).Where(b => b.Contains("\"rectifier\"", StringComparison.Ordinal))];
        Assert.Equal(
            [
                """{"block":"rectifier","throttle":"first","kind":"bridge","cell":"selenium"}""",
                """{"block":"rectifier","throttle":"second","kind":"half","cell":"silicon"}""",
            ],
            Rectifiers(differ)
        );
        Assert.All(Rectifiers(differ with { Cell = "disc" }), b => Assert.EndsWith("\"cell\":\"disc\"}", b, StringComparison.Ordinal));
        // Of several that are the same and unknown what is usual is taken; of one by itself all stay possible.
        Assert.All(Rectifiers(differ with { Cell = KindAnswers.Unknown }), b => Assert.DoesNotContain("cell", b, StringComparison.Ordinal));
        Assert.Equal(["rectifier", "rectifier-1", "rectifier-2"], Asked(differ, "rectifier"));
        Assert.DoesNotContain(KindQuestions.Ask(AskedUnits.Unlike, KindQuestions.Cell).Choices, c => c.Word == KindAnswers.Differ);
    }

    [Fact]
    public void What_an_unknown_rectifier_may_be_is_settled_at_its_own_question()
    {
        var plates = Roller with { Output = "bridge", Cell = "selenium" };
        var open = Of(plates, plates with { Cell = KindAnswers.Unknown }) with { Cell = KindAnswers.Differ };
        var (kinds, asked, problems) = TypeDraft.Read(open, AskedUnits.Id);
        Assert.Empty(problems);
        var drafted = TypeDraft.Run(kinds!, asked, [], UsualShop.Make(), new DiagnosisOptions());
        Assert.Equal(["rectifier-2"], drafted.Made.Open.Select(o => o.Question).Distinct());
        Assert.Equal(["disc", "selenium", "silicon"], drafted.Made.Open.Select(o => o.Word).Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Asked(KindAnswers a, string about) =>
        KindQuestions.Of(a).Where(q => q.StartsWith(about, StringComparison.Ordinal));
}
