using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Workshop.Asking;

namespace Ohmstead.Workshop.Tests.Asking;

/// <summary>Each answer gives exactly its field of the outline; the fields are those of docs/formats.md.</summary>
public sealed class AnswerOutlineTests
{
    private static readonly KindAnswers One = AskedUnits.Single with { Posts = [], Breaker = "none" };

    private const string Winding = """{"block":"winding","id":"main","from":"U"}""";
    private const string Throttle = """{"block":"throttle","id":"a","on":"main","kind":"roller","volts":[6,18]}""";

    [Theory]
    [InlineData("120", "90", "60", """{"volts":120,"watts":90,"hertz":60}""")]
    [InlineData("120", "", "", """{"volts":120}""")]
    [InlineData("", "", "", """{"volts":{"between":[110,125]}}""")]
    [InlineData("115–120", "90,5", "", """{"volts":{"between":[115,120]},"watts":90.5}""")]
    public void The_plate_is_as_it_was_read(string volts, string watts, string hertz, string plate) =>
        Assert.Equal(plate, AskedUnits.Outline(One with { Volts = volts, Watts = watts, Hertz = hertz })["plate"]!.ToJsonString());

    [Fact]
    public void The_single_throttle_unit_is_its_outline()
    {
        Assert.Equal(
            ["""{"block":"winding","id":"main","from":"U","posts":{"B":14}}""", Throttle, """{"block":"breaker","in":"common"}"""],
            AskedUnits.Blocks(AskedUnits.Single)
        );
        Assert.Equal("Single-throttle unit, 90 W", (string?)AskedUnits.Outline(AskedUnits.Single)["title"]);
    }

    [Fact]
    public void Each_post_that_others_are_counted_from_starts_a_winding_of_its_own() =>
        Assert.Equal(
            [
                """{"block":"winding","id":"first","from":"U"}""",
                """{"block":"winding","id":"second","from":"V"}""",
                """{"block":"winding","id":"fixed","from":"G","posts":{"F":12}}""",
                """{"block":"throttle","id":"a","on":"first","kind":"shoe","volts":[7,17]}""",
                """{"block":"throttle","id":"d","on":"second","kind":"shoe","volts":[7,{"between":[17,18]}]}""",
                """{"block":"whistle","throttle":"a","boost":5,"from":"own"}""",
                """{"block":"whistle","throttle":"d","boost":5,"from":"own"}""",
                """{"block":"direction","throttle":"a","kind":"interrupts"}""",
                """{"block":"direction","throttle":"d","kind":"interrupts"}""",
                """{"block":"breaker","in":"throttle"}""",
                """{"block":"winding","id":"lamp","volts":6.3}""",
                """{"block":"pilot","across":"lamp"}""",
            ],
            AskedUnits.Blocks(AskedUnits.Twin)
        );

    [Fact]
    public void A_whistle_that_is_no_longer_asked_for_is_not_built() =>
        Assert.DoesNotContain(
            AskedUnits.Blocks(AskedUnits.Direct with { Whistle = "shared", WhistleFrom = "own" }),
            b => b.Contains("whistle", StringComparison.Ordinal)
        );

    [Fact]
    public void A_direct_unit_has_its_wire_its_bridge_and_its_switch() =>
        Assert.Equal(
            [
                """{"block":"winding","id":"main","volts":16}""",
                """{"block":"winding","id":"fixed","from":"Q","posts":{"P":16}}""",
                """{"block":"throttle","id":"track","on":"main","kind":"rheostat","ohms":30}""",
                """{"block":"rectifier","throttle":"track","kind":"bridge","cell":"selenium"}""",
                """{"block":"direction","throttle":"track","kind":"reverses"}""",
                """{"block":"breaker","in":"primary","amps":1}""",
            ],
            AskedUnits.Blocks(AskedUnits.Direct)
        );

    [Fact]
    public void Throttles_that_differ_each_have_what_was_said_of_them()
    {
        Assert.Equal(
            [
                """{"block":"winding","id":"first","from":"U","posts":{"B":14}}""",
                """{"block":"winding","id":"track"}""",
                """{"block":"throttle","id":"a","on":"first","kind":"roller","volts":[6,18]}""",
                """{"block":"throttle","id":"second","on":"track","kind":"steps","volts":[6,9,12,15]}""",
                """{"block":"rectifier","throttle":"second","kind":"bridge","cell":"silicon"}""",
                """{"block":"range","throttle":"a"}""",
                """{"block":"whistle","throttle":"a"}""",
                """{"block":"direction","throttle":"a","kind":"interrupts"}""",
                """{"block":"direction","throttle":"second","kind":"reverses"}""",
                """{"block":"breaker","in":"throttle"}""",
            ],
            AskedUnits.Blocks(AskedUnits.Unlike)
        );
        Assert.Equal(
            ["runs", "runs-1", "runs-2", "output", "output-1", "output-2", "rectifier", "posts-1", "posts-2", "fixed"],
            KindQuestions.Of(AskedUnits.Unlike).Skip(2).Take(10)
        );
        // Asked once while they are the same, and the whistle of the one that can have one only.
        Assert.Equal(["runs", "output", "posts-1"], KindQuestions.Of(AskedUnits.Twin).Skip(2).Take(3));
        Assert.DoesNotContain("whistle-2", KindQuestions.Of(AskedUnits.Unlike with { Whistle = KindAnswers.Differ }));
    }

    /// <summary>On many units the outer throttles alone have whistle and direction.</summary>
    [Fact]
    public void Of_four_throttles_two_may_have_a_whistle()
    {
        var four = Enumerable
            .Range(0, 4)
            .Aggregate(
                AskedUnits.Single with
                {
                    Count = "4",
                    Throttles = [],
                    Whistle = KindAnswers.Differ,
                    WhistleFrom = "own",
                    Posts = [],
                    Direction = "none",
                },
                (a, n) =>
                    KindQuestions.Choose(
                        a.With(
                            n,
                            new()
                            {
                                Post = "ABCD"[n..(n + 1)],
                                Return = "U",
                                Low = "6",
                                Full = "18",
                            }
                        ),
                        KindQuestions.Each(KindQuestions.Whistle, n),
                        n is 0 or 3 ? "each" : "none"
                    )
            );
        Assert.Equal("each", KindQuestions.Chosen(four, "whistle-4"));
        Assert.Equal("Yes", KindQuestions.Said(four, "whistle-4"));
        Assert.Equal("There is none", KindQuestions.Said(four, "whistle-2"));
        Assert.Equal("Throttle 2: is there a whistle lever?", KindQuestions.Ask(four, "whistle-2").Title);
        Assert.Equal(
            ["a", "d"],
            AskedUnits.Outline(four)["blocks"]!.AsArray().Where(b => (string?)b!["block"] == "whistle").Select(b => (string?)b!["throttle"])
        );
        Assert.Empty(TypeDraft.Read(four, AskedUnits.Id).Problems);
    }

    [Fact]
    public void What_a_throttle_of_its_own_runs_on_stays_open_at_its_own_question()
    {
        var answers = AskedUnits.Unlike with { Output = "ac", Cell = "", Direction = "none" };
        answers = KindQuestions.Unknown(answers, "runs-1").With(1, answers.Throttle(1) with { Post = "D", Return = "U" });
        var (kinds, asked, problems) = TypeDraft.Read(answers, AskedUnits.Id);
        Assert.Empty(problems);
        Assert.Equal(2, kinds!.Kinds.Length);
        var open = TypeDraft
            .Run(kinds, asked, [], Ohmstead.Workshop.Shops.UsualShop.Make(), new Electrical.Diagnosis.DiagnosisOptions())
            .Made.Open;
        Assert.Equal(["runs-1"], open.Select(o => o.Question).Distinct());
        Assert.Equal(["roller", "shoe"], open.Select(o => o.Word).Order(StringComparer.Ordinal));
    }

    /// <summary>What each choice adds behind the winding and the throttle.</summary>
    public static TheoryData<string, string, string> Choices() =>
        new()
        {
            { KindQuestions.Range, "each", """{"block":"range","throttle":"a"}""" },
            { KindQuestions.Range, "none", "" },
            { KindQuestions.Range, "unknown", "" },
            { KindQuestions.Whistle, "each", """{"block":"whistle","throttle":"a"}""" },
            { KindQuestions.Whistle, "shared", """{"block":"whistle","throttle":["a"]}""" },
            { KindQuestions.Whistle, "none", "" },
            { KindQuestions.Direction, "interrupts", """{"block":"direction","throttle":"a","kind":"interrupts"}""" },
            { KindQuestions.Direction, "rotary", """{"block":"direction","throttle":"a","kind":"rotary"}""" },
            { KindQuestions.Direction, "some", """{"block":"direction","throttle":"a","kind":"unknown"}""" },
            { KindQuestions.Direction, "none", "" },
            { KindQuestions.Direction, "unknown", "" },
            { KindQuestions.Breaker, "common", """{"block":"breaker","in":"common"}""" },
            { KindQuestions.Breaker, "throttle", """{"block":"breaker","in":"throttle"}""" },
            { KindQuestions.Breaker, "primary", """{"block":"breaker","in":"primary"}""" },
            { KindQuestions.Breaker, "unknown", """{"block":"breaker","in":"unknown"}""" },
            { KindQuestions.Breaker, "none", "" },
            { KindQuestions.Lamp, "main", """{"block":"pilot","across":"main"}""" },
            { KindQuestions.Lamp, "post", """{"block":"pilot","across":["U","a"]}""" },
            { KindQuestions.Lamp, "breaker", """{"block":"pilot","across":"breaker"}""" },
            { KindQuestions.Lamp, "unknown", """{"block":"pilot","across":"unknown"}""" },
            { KindQuestions.Lamp, "own", """{"block":"winding","id":"lamp","volts":"unknown"}{"block":"pilot","across":"lamp"}""" },
            { KindQuestions.Lamp, "none", "" },
        };

    [Theory]
    [MemberData(nameof(Choices))]
    public void A_choice_adds_its_block(string question, string word, string added)
    {
        var answers = KindQuestions.Choose(One, question, word);
        Assert.Equal(word, KindQuestions.Chosen(answers, question));
        Assert.Equal(Winding + Throttle + added, string.Concat(AskedUnits.Blocks(answers)));
    }

    [Theory]
    [InlineData("own", "5", """{"block":"whistle","throttle":"a","boost":5,"from":"own"}""")]
    [InlineData("winding", "", """{"block":"whistle","throttle":"a","from":"winding"}""")]
    [InlineData("none", "5", """{"block":"whistle","throttle":"a","boost":0}""")]
    [InlineData("unknown", "", """{"block":"whistle","throttle":"a","from":"unknown"}""")]
    public void A_whistle_says_whose_volts_it_adds(string from, string volts, string block) =>
        Assert.Equal(block, AskedUnits.Blocks(One with { Whistle = "each", WhistleFrom = from, WhistleVolts = volts })[^1]);

    [Theory]
    [InlineData("roller", "6", "", "", """{"block":"throttle","id":"a","on":"main","kind":"roller","volts":[6,"unknown"]}""")]
    [InlineData("unknown", "6", "18", "", """{"block":"throttle","id":"a","on":"main","kind":"unknown","volts":[6,18]}""")]
    [InlineData("steps", "", "", "6 8,5 11", """{"block":"throttle","id":"a","on":"main","kind":"steps","volts":[6,8.5,11]}""")]
    [InlineData(
        "steps",
        "",
        "",
        "2",
        """{"block":"throttle","id":"a","on":"main","kind":"steps","volts":[{"between":[4.44,8.1]},{"between":[13.33,24.3]}]}"""
    )]
    public void A_throttle_says_what_it_runs_on(string runs, string low, string full, string steps, string block) =>
        Assert.Equal(
            block,
            AskedUnits.Blocks(
                One with
                {
                    Runs = runs,
                    Throttles =
                    [
                        new()
                        {
                            Post = "A",
                            Return = "U",
                            Low = low,
                            Full = full,
                            Steps = steps,
                        },
                    ],
                }
            )[1]
        );

    [Fact]
    public void A_post_behind_a_disc_is_fed_from_its_post() =>
        Assert.Equal(
            """{"block":"rectifier","kind":"half","post":"D","from":"B"}""",
            AskedUnits.Blocks(AskedUnits.Single with { Posts = AskedUnits.Single.Posts.Add(new() { Post = "d", FedFrom = "b" }) })[2]
        );

    /// <summary>The reader takes what the answers give, so far as each question; nothing else is ever built.</summary>
    [Fact]
    public void The_reader_takes_what_is_answered_so_far_at_every_question()
    {
        foreach (var whole in new[] { AskedUnits.Single, AskedUnits.Twin, AskedUnits.Direct, AskedUnits.Unlike })
        {
            var questions = KindQuestions.Of(whole);
            for (var n = questions.IndexOf(KindQuestions.Posts(0)); n < questions.Length; n++)
            {
                var soFar = questions.Skip(n + 1).Aggregate(whole, KindQuestions.Without);
                var read = TypeDraft.Read(soFar, AskedUnits.Id);
                Assert.True(read.Problems.IsEmpty, $"{questions[n]}: {string.Join("; ", read.Problems)}");
            }
        }
    }

    /// <summary>A press of "I don't know" on every question still ends in a type.</summary>
    [Theory]
    [InlineData("1")]
    [InlineData("2")]
    public void Of_a_unit_of_which_nothing_is_known_a_type_is_made(string count)
    {
        var answers = new KindAnswers { Count = count };
        foreach (var question in KindQuestions.Of(answers).Where(q => q != KindQuestions.Count))
            answers = KindQuestions.Unknown(answers, question);
        answers = answers.ThrottleCount == 1 ? answers : answers.With(0, new() { Post = "A" }).With(1, new() { Post = "D" });
        var read = TypeDraft.Read(answers, AskedUnits.Id);
        Assert.Empty(read.Problems);
        Assert.InRange(read.Kinds!.Kinds.Length, 2, 24);
    }

    [Fact]
    public void What_was_answered_is_kept_as_it_was_given_whatever_it_is()
    {
        var typed = AskedUnits.Twin with { Watts = "about 200", LampPost = "<b>" };
        var kept = OwnType.Read(OwnType.Write(new OwnType(typed, Guid.Empty, null, [])))!;
        Assert.Equal(JsonSerializer.Serialize(typed), JsonSerializer.Serialize(kept.Answers));
        Assert.Equal("7", OwnType.Read("""{"answers":{"watts":"7","ofALaterVersion":1}}""")!.Answers.Watts);
        Assert.Null(OwnType.Read("[]"));
    }

    [Fact]
    public void The_outline_is_one_by_its_mark()
    {
        var text = AnswerOutline.Of(AskedUnits.Single, AskedUnits.Id).Text;
        Assert.True(OutlineFile.IsOne(text));
        Assert.Equal(AskedUnits.Id, (string?)JsonNode.Parse(text)!["id"]);
    }
}
