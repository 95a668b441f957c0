using CsCheck;
using Ohmstead.Electrical.Reckoning;

namespace Ohmstead.Electrical.Tests.Reckoning.Dating;

/// <summary>The sums of <c>dating</c>, held against every way in which a unit can have come to look as it does, one after the other.</summary>
public class DatingSumsTests
{
    private const double Close = 1e-10;

    /// <summary>Percent, so that this is 1e-12 of a chance.</summary>
    private static void Same(double expected, double given) => Assert.Equal(expected, given, Close);

    [Fact]
    public void Years_and_swaps_are_those_of_every_way_counted_out() =>
        DrawnDating.Any.Sample(
            drawn =>
            {
                var ways = drawn.Enumerated();
                var all = ways.Sum(y => y[^1]);
                if (all < 1e-300)
                {
                    Assert.Equal(["$.details"], Asked.Refused(drawn.Fields()));
                    return;
                }
                var answer = Asked.Answer(drawn.Fields());
                for (var y = 0; y < ways.Length; y++)
                {
                    Assert.Equal(drawn.First + y, answer.At("years")![y]!.Number("year"));
                    Same(100 * ways[y][^1] / all, answer.At("years")![y]!.Number("percent"));
                }
                var said = 0;
                for (var d = 0; d < drawn.Details.Length; d++)
                    if (drawn.Details[d].Seen is not null)
                        Same(100 * ways.Sum(y => y[d]) / all, answer.At("details")![said++]!.Number("swappedPercent"));
                Assert.Equal(said, answer.At("details")!.AsArray().Count);
            },
            iter: 600
        );

    /// <summary>From the years that the answer prints: no shorter range is as sure, and none of its length is surer.</summary>
    [Fact]
    public void The_range_is_the_shortest_that_is_sure_enough() =>
        Gen.Select(DrawnDating.Any, DrawnDating.OneOf(5, 50, 83, 90, 100))
            .Where(t => t.Item1.Enumerated().Sum(y => y[^1]) > 1e-300)
            .Sample(
                (drawn, percent) =>
                {
                    var answer = Asked.Answer(drawn.Fields(percent));
                    var years = Enumerable.Range(0, drawn.Shares.Length).Select(y => answer.At("years")![y]!.Number("percent")).ToArray();
                    var (from, to) = ((int)answer.Number("from") - drawn.First, (int)answer.Number("to") - drawn.First);
                    double Sum(int a, int b) => years[a..(b + 1)].Sum();
                    Same(Sum(from, to), answer.Number("percent"));
                    Assert.True(answer.Number("percent") >= percent - Close);
                    for (var a = 0; a < years.Length; a++)
                    for (var b = a; b < years.Length && b - a <= to - from; b++)
                        if (b - a < to - from)
                            Assert.True(Sum(a, b) < percent);
                        else
                            Assert.True(Sum(a, b) <= Sum(from, to) + (a < from ? -1e-11 : Close));
                    var best = (int)answer.Number("mostProbable") - drawn.First;
                    Assert.InRange(years[best], years.Max() - Close, years.Max());
                    Assert.DoesNotContain(years[..best], y => y > years.Max() - (Close / 10));
                },
                iter: 300
            );

    /// <summary>For and against, by the two rules of the method, from every way counted out; what lies on a rule's edge is left out.</summary>
    [Fact]
    public void Each_argues_as_every_way_counted_out_does() =>
        DrawnDating
            .Any.Where(d => d.Enumerated().Sum(y => y[^1]) > 1e-300)
            .Sample(
                drawn =>
                {
                    var answer = Asked.Answer(drawn.Fields());
                    var (from, to) = ((int)answer.Number("from") - drawn.First, (int)answer.Number("to") - drawn.First);
                    var said = 0;
                    for (var d = 0; d < drawn.Details.Length; d++)
                        if (drawn.Details[d].Seen is not null)
                            Assert.Contains(answer.At("details")![said++]!.Text("argues"), Argues(drawn, d, from, to));
                },
                iter: 300
            );

    /// <summary>What a detail may be said to argue: one word, or two on the edge between them.</summary>
    private static string[] Argues(DrawnDating drawn, int detail, int from, int to)
    {
        var (ways, seen) = (drawn.Enumerated(), drawn.Details[detail].Seen!.Value);
        var blind = drawn with { Details = [.. drawn.Details.Select((d, n) => n == detail ? d with { Seen = null } : d)] };
        var others = blind.Enumerated();
        double In(double[][] law) => law[from..(to + 1)].Sum(y => y[^1]);
        double Out(double[][] law) => law.Sum(y => y[^1]) - law[from..(to + 1)].Sum(y => y[^1]);
        var whole = from == 0 && to == ways.Length - 1;
        var (outWith, outWithout) = whole ? (0, 0) : (Math.Max(0, Out(ways)), Math.Max(0, Out(others)));
        var times =
            outWithout < 1e-14 * In(others) ? double.NaN
            : outWith < 1e-14 * In(ways) ? double.PositiveInfinity
            : In(ways) / In(others) / (outWith / outWithout);
        double Mean(Func<int, double> of) => Enumerable.Range(from, to - from + 1).Sum(y => ways[y][^1] * of(drawn.First + y)) / In(ways);
        var fits = Mean(y => drawn.Details[detail].Shows(seen, y));
        var replaced = Mean(y => drawn.Replaced(detail, seen, y));
        string Said(double give) =>
            times > 1.5 * give ? "for"
            : ways.Sum(y => y[detail]) > 0 && fits * 1.5 * give < replaced || times * 1.5 * give < 1 ? "against"
            : "neither";
        return [Said(1 - 1e-9), Said(1), Said(1 + 1e-9)];
    }

    /// <summary>How much a detail tells: each thing it may show, looked at in turn with every way counted out.</summary>
    [Fact]
    public void What_is_looked_at_next_tells_most_of_the_year() =>
        DrawnDating
            .Any.Where(d => d.Enumerated().Sum(y => y[^1]) > 1e-300)
            .Sample(
                drawn =>
                {
                    double[] Law(DrawnDating of) => [.. of.Enumerated().Select(y => y[^1])];
                    static double Bits(double[] law) => law.Where(p => p > 0).Sum(p => -p / law.Sum() * Math.Log2(p / law.Sum()));
                    var now = Law(drawn);
                    var told = new List<(string Id, double Bits)>();
                    for (var d = 0; d < drawn.Details.Length; d++)
                    {
                        if (drawn.Details[d].Seen is not null)
                            continue;
                        var laws = Enumerable
                            .Range(0, drawn.Details[d].Variants.Length + 1)
                            .Select(v =>
                                Law(drawn with { Details = [.. drawn.Details.Select((o, n) => n == d ? o with { Seen = v } : o)] })
                            )
                            .Where(l => l.Sum() > 0);
                        told.Add((DrawnDating.Name("d", d), Bits(now) - laws.Sum(l => l.Sum() / now.Sum() * Bits(l))));
                    }
                    var next = Asked.Answer(drawn.Fields()).At("next")!.AsArray().Where(n => n!.Text("why") == "tells most").ToList();
                    Assert.Equal(told.Count(t => t.Bits > 1e-9), next.Count);
                    foreach (var n in next)
                        Assert.Equal(told.First(t => t.Id == n!.Text("id")).Bits, n!.Number("bits"), 1e-9);
                    Assert.Equal(next.Select(n => n!.Number("bits")).OrderDescending(), next.Select(n => n!.Number("bits")));
                },
                iter: 200
            );

    /// <summary>
    /// Units drawn from what a question says of its kind: years, swaps and parts. The printed range holds the true year as often as it
    /// says, and each swap happens as often as it says. Four thousand: three standard errors of 90 in 100 are 1.4.
    /// </summary>
    [Fact]
    public void Of_units_that_were_drawn_the_range_holds_as_many_as_it_says()
    {
        const int units = 4000;
        var random = new Random(1951);
        var (inside, said, swaps, swapsSaid) = (0, 0.0, 0, 0.0);
        for (var n = 0; n < units; n++)
        {
            var (shown, year, isSwapped) = Draw(random);
            var answer = Asked.Answer(shown.Fields());
            inside += year >= answer.Number("from") && year <= answer.Number("to") ? 1 : 0;
            said += answer.Number("percent") / 100;
            swaps += isSwapped ? 1 : 0;
            swapsSaid += answer.Number("details[0].swappedPercent") / 100;
        }
        Assert.InRange(said / units, 0.9, 1);
        Assert.InRange((inside - said) / units, -0.014, 0.014);
        Assert.InRange((swaps - swapsSaid) / units, -0.02, 0.02);
    }

    private static readonly DrawnDating Kind = new(
        1946,
        [1, 3, 4, 4, 4, 5, 5, 4, 2, 1],
        1990,
        30,
        [
            new(60, [new(null, 1949, 1), new(1950, 1956, 2), new(1957, null, 0)], 0),
            new(10, [new(1946, 1948, 1), new(1949, null, 1)], 0, With: 0),
            new(5, [new(null, 1951, 1), new(1952, null, 1)], 0),
            new(15, [new(1947, 1950, 2), new(1953, 1955, 0)], 0),
        ]
    );

    private static (DrawnDating Shown, int Year, bool IsSwapped) Draw(Random random)
    {
        int Of(IReadOnlyList<double> weights)
        {
            var at = random.NextDouble() * weights.Sum();
            for (var n = 0; ; n++)
                if ((at -= weights[n]) < 0 || n == weights.Count - 1)
                    return n;
        }
        var year = Kind.First + Of(Kind.Shares);
        int Part() =>
            random.NextDouble() < Kind.DonorPercent / 100 ? Kind.First + Of(Kind.Shares) : year + random.Next(Kind.Now - year + 1);
        var parts = new int?[Kind.Details.Length];
        var shown = new DrawnDetail[Kind.Details.Length];
        for (var d = 0; d < shown.Length; d++)
        {
            var detail = Kind.Details[d];
            parts[d] =
                detail.With is { } with && parts[with] is { } came ? came
                : random.NextDouble() < detail.SwappedPercent / 100 ? Part()
                : null;
            shown[d] = detail with
            {
                Seen = Of([.. Enumerable.Range(0, detail.Variants.Length + 1).Select(v => detail.Shows(v, parts[d] ?? year))]),
            };
        }
        return (Kind with { Details = shown }, year, parts[0] is not null);
    }
}
