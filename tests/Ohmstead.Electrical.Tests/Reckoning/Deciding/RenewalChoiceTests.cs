using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>Now or later: a little tree by hand, drawn trees by trying every set, and tests that are right or wrong.</summary>
public class RenewalChoiceTests
{
    private static TakeApartStep Step(string id, string[] after, double minutes, string[][]? afterAny = null) =>
        new(id, id, [.. after], [.. (afterAny ?? []).Select(g => g.ToImmutableArray())], minutes, 0, 0, 0, [], "", 0);

    private static TypeSheet Sheet(params TakeApartStep[] steps) => Reference.Twin160 with { TakeApart = [.. steps] };

    /// <summary>A cover of 30 minutes; a and b below it, 6 minutes each.</summary>
    private static readonly TypeSheet Small = Sheet(Step("cover", [], 30), Step("a", ["cover"], 6), Step("b", ["cover"], 6));

    private static JsonObject Ask(TypeSheet sheet, string parts, string rest = "") =>
        Asked.Answer($"\"question\": \"now-or-later\", \"ratePerHour\": 60, \"comeBackCost\": 10, \"parts\": [{parts}]{rest}", sheet);

    /// <remarks>
    /// A dollar a minute. Cover off: a now is 6 + 4 + 2 = 12; on failure 36 + 6 + 10 = 52, a quarter of it 13, break-even at 12/52. Cover on: now is 42.
    /// Both at a quarter, cover on: all later 26, one now 42 + 13, both 30 + 2·12 = 54. At three quarters: later 39 each, one now 42 + 39, both 54.
    /// </remarks>
    [Fact]
    public void A_cover_and_two_parts_are_as_worked_out_by_hand()
    {
        static string Part(string step, double percent) =>
            FormattableString.Invariant($"{{ \"step\": \"{step}\", \"price\": 4, \"workMinutes\": 2, \"failPercent\": {percent} }}");
        var open = Ask(Small, Part("a", 25), ", \"open\": [\"cover\"]");
        Assert.Equal((12, 52, 13), (open.Number("parts[0].now"), open.Number("parts[0].onFailure"), open.Number("parts[0].later")));
        Assert.Equal(1200.0 / 52, open.Number("parts[0].breakEvenPercent"), 1e-9);
        Assert.Equal("now", open.Text("parts[0].best"));
        var closed = Ask(Small, Part("a", 25) + "," + Part("b", 25));
        Assert.Equal((42, "later"), (closed.Number("parts[0].now"), closed.Text("parts[0].best")));
        Assert.Equal(
            (0, 26, 26),
            (closed.At("together.now")!.AsArray().Count, closed.Number("together.expectedCost"), closed.Number("together.allLater"))
        );
        var likely = Ask(Small, Part("b", 75) + "," + Part("a", 75));
        Assert.Equal("later", likely.Text("parts[0].best"));
        Assert.Equal(["a", "b"], likely.At("together.now")!.AsArray().Select(s => s!.GetValue<string>()));
        Assert.Equal((54, 78), (likely.Number("together.expectedCost"), likely.Number("together.allLater")));
    }

    /// <remarks>By its four outcomes: fails or not, the test cries out or not.</remarks>
    [Theory]
    [InlineData("here", 30, 90, 5)]
    [InlineData("part", 30, 90, 5)]
    [InlineData("here", 60, 100, 0)]
    [InlineData("part", 5, 40, 50)]
    [InlineData("here", 30, 100, 100)]
    public void A_test_costs_the_sum_of_its_outcomes(string access, double fails, double detects, double falsely)
    {
        FormattableString part =
            $$"""{ "step": "a", "price": 4, "workMinutes": 2, "failPercent": {{fails}}, "test": { "minutes": 3, "detectsPercent": {{detects}}, "falsePercent": {{falsely}}, "access": "{{access}}" } }""";
        var answer = Ask(Small, FormattableString.Invariant(part), ", \"open\": [\"cover\"]");
        var (p, d, f) = (fails / 100, detects / 100, falsely / 100);
        // 6 minutes to reach it, 6 to fit a new one, 52 when it fails later.
        var (toTest, afterAlarm) = access == "part" ? (3.0 + 6, 6.0) : (3, 12);
        var cost =
            (p * d * (toTest + afterAlarm))
            + ((1 - p) * f * (toTest + afterAlarm))
            + (p * (1 - d) * (toTest + 52))
            + ((1 - p) * (1 - f) * toTest);
        Assert.Equal(cost, answer.Number("parts[0].test"), 1e-9);
        Assert.Equal(100 * ((p * d) + ((1 - p) * f)), answer.Number("parts[0].alarmPercent"), 1e-9);
        var quiet = (p * (1 - d)) + ((1 - p) * (1 - f));
        if (quiet > 0)
            Assert.Equal(100 * p * (1 - d) / quiet, answer.Number("parts[0].failPercentIfQuiet"), 1e-9);
        else
            Assert.Null(answer.At("parts[0].failPercentIfQuiet"));
        var best = new[] { ("now", 12), ("later", 52 * p), ("test", cost) }.MinBy(c => c.Item2).Item1;
        Assert.Equal(best, answer.Text("parts[0].best"));
    }

    [Fact]
    public void Without_a_test_its_fields_are_null()
    {
        var part = Ask(Small, """{ "step": "a", "price": 4, "failPercent": 1 }""").At("parts[0]")!.AsObject();
        Assert.Equal((null, null, null), (part["test"], part["alarmPercent"], part["failPercentIfQuiet"]));
    }

    /// <remarks>Every set of steps that can be put in an order is tried, for every set of parts.</remarks>
    [Fact]
    public void On_drawn_trees_the_set_is_the_best_of_all_sets()
    {
        var dice = new Random(17);
        for (var tree = 0; tree < 40; tree++)
        {
            var steps = new TakeApartStep[9];
            string Earlier(int n) => S(dice.Next(n));
            for (var n = 0; n < steps.Length; n++)
                steps[n] = Step(
                    S(n),
                    n > 0 && dice.Next(2) == 0 ? [Earlier(n)] : [],
                    dice.Next(1, 20),
                    n > 1 && dice.Next(2) == 0
                        ?
                        [
                            [Earlier(n)],
                            [Earlier(n), Earlier(n)],
                        ]
                        : null
                );
            var sheet = Sheet(steps);
            var open = dice.Next(3) == 0 ? steps.Where(s => s.After.IsEmpty && s.AfterAny.IsEmpty).Take(2).Select(s => s.Id).ToArray() : [];
            var parts = Enumerable
                .Range(0, 9)
                .OrderBy(_ => dice.Next())
                .Take(4)
                .Select(n => (Step: steps[n].Id, Price: dice.Next(20), Fails: dice.Next(101)))
                .ToArray();
            var answer = Ask(
                sheet,
                string.Join(
                    ",",
                    parts.Select(p =>
                        FormattableString.Invariant($"{{ \"step\": \"{p.Step}\", \"price\": {p.Price}, \"failPercent\": {p.Fails} }}")
                    )
                ),
                $", \"open\": [{string.Join(",", open.Select(o => $"\"{o}\""))}]"
            );
            var (closed, opened) = (Ways(steps, []), Ways(steps, open));
            double Later(int n) => parts[n].Fails / 100.0 * (Cheapest(closed, [parts[n].Step]) + parts[n].Price + 10);
            var costs = Enumerable
                .Range(0, 16)
                .Select(set =>
                    Enumerable.Range(0, 4).Sum(n => (set & (1 << n)) != 0 ? parts[n].Price : Later(n))
                    + Cheapest(opened, [.. parts.Where((_, n) => (set & (1 << n)) != 0).Select(p => p.Step)])
                );
            Assert.Equal(costs.Min(), answer.Number("together.expectedCost"), 1e-9);
            Assert.Equal(Enumerable.Range(0, 4).Sum(Later), answer.Number("together.allLater"), 1e-9);
        }
    }

    /// <summary>Every set of steps as far as it can be put in an order, and its minutes.</summary>
    private static List<(HashSet<string> Done, double Minutes)> Ways(TakeApartStep[] steps, string[] open)
    {
        var ways = new List<(HashSet<string>, double)>();
        for (var set = 0; set < 1 << steps.Length; set++)
        {
            var done = new HashSet<string>();
            for (var grew = true; grew; )
            {
                grew = false;
                for (var n = 0; n < steps.Length; n++)
                    if (
                        ((set & (1 << n)) != 0 || open.Contains(steps[n].Id))
                        && steps[n].After.All(done.Contains)
                        && (steps[n].AfterAny.IsEmpty || steps[n].AfterAny.Any(g => g.All(done.Contains)))
                    )
                        grew |= done.Add(steps[n].Id);
            }
            ways.Add((done, steps.Where(s => done.Contains(s.Id) && !open.Contains(s.Id)).Sum(s => s.MinutesOut)));
        }
        return ways;
    }

    private static double Cheapest(List<(HashSet<string> Done, double Minutes)> ways, string[] reach) =>
        ways.Where(w => reach.All(w.Done.Contains)).Min(w => w.Minutes);

    private static string S(int n) => "s" + n.ToString(CultureInfo.InvariantCulture);

    /// <remarks>All 256 sets are planned here, one by one.</remarks>
    [Fact]
    public void Of_eight_parts_on_sixty_steps_no_set_is_cheaper()
    {
        var dice = new Random(60);
        ImmutableArray<TakeApartStep> steps =
        [
            .. Enumerable
                .Range(0, 60)
                .Select(n =>
                    Step(
                        S(n),
                        n > 3 && dice.Next(3) > 0 ? [S(dice.Next(n))] : [],
                        dice.Next(1, 30),
                        n > 3 && dice.Next(2) == 0
                            ?
                            [
                                [S(dice.Next(n))],
                                [S(dice.Next(n)), S(dice.Next(n))],
                            ]
                            : null
                    )
                ),
        ];
        string[] parts = [.. Enumerable.Range(52, 8).Select(S)];
        var answer = Ask(
            Sheet([.. steps]),
            string.Join(",", parts.Select(p => $"{{ \"step\": \"{p}\", \"price\": 3, \"failPercent\": 40 }}"))
        );
        var later = answer["parts"]!.AsArray().Select(p => p!.Number("later")).ToArray();
        var costs = Enumerable
            .Range(0, 256)
            .Select(set =>
                Enumerable.Range(0, 8).Sum(n => (set & (1 << n)) != 0 ? 3 : later[n])
                + TakeApartPlanner.Plan(steps, [.. parts.Where((_, n) => (set & (1 << n)) != 0)], 60).ExpectedCost
            );
        Assert.Equal(costs.Min(), answer.Number("together.expectedCost"), 1e-9);
    }

    /// <remarks>So many steps are not searched to the end: the answer says so, and is never worse than leaving all.</remarks>
    [Fact]
    public void In_a_tree_too_large_to_prove_it_says_so_and_is_no_worse_than_leaving_all()
    {
        var dice = new Random(1);
        TakeApartStep[] steps =
        [
            .. Enumerable
                .Range(0, 400)
                .Select(n =>
                    Step(
                        S(n),
                        [],
                        dice.Next(1, 30),
                        n > 4 && dice.Next(5) > 0
                            ?
                            [
                                [S(dice.Next(n)), S(dice.Next(n))],
                                [S(dice.Next(n)), S(dice.Next(n))],
                                [S(dice.Next(n))],
                            ]
                            : null
                    )
                ),
        ];
        var answer = Ask(
            Sheet(steps),
            string.Join(",", Enumerable.Range(396, 4).Select(n => $"{{ \"step\": \"{S(n)}\", \"price\": 3, \"failPercent\": 30 }}"))
        );
        Assert.InRange(answer.Number("together.expectedCost"), 1, answer.Number("together.allLater"));
        Assert.Contains(
            answer["outside"]!.AsArray(),
            s => s!.GetValue<string>().StartsWith("The sheet has too many steps", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Costs_to_reach_are_those_of_the_plan()
    {
        var steps = Reference.Twin160.TakeApart;
        ImmutableArray<string> off = ["cap-left", "handle-left"];
        var costs = new ReachCosts(steps, ["roller-left-out", "breaker-out-step"], 50, off.ToHashSet());
        Assert.Equal(
            TakeApartPlanner.Plan(steps, ["roller-left-out", "breaker-out-step"], 50, off.ToHashSet()).ExpectedCost,
            costs.To(["roller-left-out", "breaker-out-step"]),
            1e-9
        );
        Assert.Equal(
            TakeApartPlanner.Plan(steps, ["breaker-out-step"]).ExpectedCost,
            new ReachCosts(steps, ["breaker-out-step"], 50, ImmutableHashSet<string>.Empty).To(["breaker-out-step"]),
            1e-9
        );
    }

    [Fact]
    public void What_cannot_be_is_refused_with_all_its_paths()
    {
        Assert.Equal(
            ["$.open[1]", "$.parts[0].step", "$.parts[1].failPercent", "$.parts[2].step", "$.parts[2].test.access"],
            Asked.Refused(
                """
                "question": "now-or-later", "open": ["cover", "nothing"], "parts": [ { "step": "what", "price": 1, "failPercent": 5 }, { "step": "a", "price": 1, "failPercent": 101 },
                  { "step": "a", "price": 1, "failPercent": 5, "test": { "minutes": 1, "detectsPercent": 1, "falsePercent": 1, "access": "there" } } ]
                """,
                Small
            )
        );
        Assert.Equal(
            ["$.open[1]"],
            Asked.Refused(
                """
                "question": "now-or-later", "open": ["b", "a", "cover"], "parts": [ { "step": "a", "price": 1, "failPercent": 5 } ]
                """,
                Sheet(Step("cover", [], 30), Step("lid", [], 1), Step("a", ["lid"], 6), Step("b", ["cover"], 6))
            )
        );
        // What waits for a step that is named is not at fault itself: the one that misses its own is, and each of those is named.
        Assert.Equal(
            ["$.open[3]", "$.open[1]", "$.open[2]"],
            Asked.Refused(
                """
                "question": "now-or-later", "open": ["deep", "b", "a", "nothing"], "parts": [ { "step": "a", "price": 1, "failPercent": 5 } ]
                """,
                Sheet(
                    Step("cover", [], 30),
                    Step("lid", [], 1),
                    Step("b", ["cover"], 6),
                    Step(
                        "a",
                        [],
                        6,
                        [
                            ["cover"],
                            ["lid", "b"],
                        ]
                    ),
                    Step("deep", ["b"], 1)
                )
            )
        );
        // Each waits for the other: neither can have been the first.
        Assert.Equal(
            ["$.open[0]", "$.open[1]"],
            Asked.Refused(
                """
                "question": "now-or-later", "open": ["a", "b"], "parts": [ { "step": "a", "price": 1, "failPercent": 5 } ]
                """,
                Sheet(
                    Step("cover", [], 30),
                    Step(
                        "a",
                        [],
                        1,
                        [
                            ["cover"],
                            ["b"],
                        ]
                    ),
                    Step(
                        "b",
                        [],
                        1,
                        [
                            ["cover"],
                            ["a"],
                        ]
                    )
                )
            )
        );
        Assert.Equal(
            ["$"],
            Asked.Refused(
                """
                "question": "now-or-later", "open": ["b"], "parts": [ { "step": "a", "price": 1, "failPercent": 5 } ]
                """
            )
        );
        var nine = string.Join(",", Enumerable.Range(0, 9).Select(n => $"{{ \"step\": \"{S(n)}\", \"price\": 1, \"failPercent\": 5 }}"));
        Assert.Equal(
            ["$.parts"],
            Asked.Refused(
                $"\"question\": \"now-or-later\", \"parts\": [{nine}]",
                Sheet([.. Enumerable.Range(0, 9).Select(n => Step(S(n), [], 1))])
            )
        );
    }
}
