using System.Globalization;
using System.Text.Json;

namespace Ohmstead.Workshop.Tests.Drawing;

/// <summary>Outlines put together by chance from every sort of block, as many of each as a unit may have.</summary>
internal sealed class DrawnOutlines
{
    private readonly Random dice;
    private readonly List<object> blocks = [];

    private DrawnOutlines(int seed) => dice = new Random(seed);

    /// <summary>The text of an outline; the same seed gives the same one.</summary>
    public static string Of(int seed)
    {
        var drawn = new DrawnOutlines(seed);
        drawn.Windings();
        return JsonSerializer.Serialize(
            new
            {
                ohmstead = "outline/1",
                id = "drawn-" + seed.ToString(CultureInfo.InvariantCulture),
                plate = new { volts = drawn.Chance(0.5) ? 120 : 230, watts = drawn.dice.Next(40, 300) },
                drawn.blocks,
            }
        );
    }

    private bool Chance(double p) => dice.NextDouble() < p;

    private string Pick(params string[] of) => of[dice.Next(of.Length)];

    private void Windings()
    {
        var windings = dice.Next(1, 4);
        var fixedPosts = new List<string>();
        var throttles = new List<(string Id, bool IsDirect, bool Slides)>();
        var starts = new List<string>();
        for (var w = 0; w < windings; w++)
        {
            var (id, from) = ("w" + Letter(w), Letter(20 + w));
            var posts = Enumerable.Range(0, dice.Next(w == 0 ? 0 : 1, 4)).ToDictionary(p => Letter((3 * w) + p), p => 6.0 + (4 * p));
            if (posts.Count == 0)
                blocks.Add(
                    new
                    {
                        block = "winding",
                        id,
                        from,
                        volts = 19,
                    }
                );
            else
                blocks.Add(
                    new
                    {
                        block = "winding",
                        id,
                        from,
                        posts,
                    }
                );
            fixedPosts.AddRange(posts.Keys);
            starts.Add(from);
            for (var n = 0; n < (w == 0 ? dice.Next(0, 3) : dice.Next(0, 2)); n++)
                throttles.Add(Throttle(FormattableString.Invariant($"t{w}{n}"), id));
        }
        Levers(throttles);
        Rest(fixedPosts, starts, throttles);
    }

    private (string Id, bool IsDirect, bool Slides) Throttle(string id, string on)
    {
        var kind = Pick("roller", "shoe", "steps", "rheostat");
        blocks.Add(
            kind switch
            {
                "rheostat" => new
                {
                    block = "throttle",
                    id,
                    on,
                    kind,
                    ohms = 25,
                },
                "steps" => new
                {
                    block = "throttle",
                    id,
                    on,
                    kind,
                    volts = Enumerable.Range(0, dice.Next(3, 9)).Select(s => 6 + (1.5 * s)),
                },
                _ => (object)
                    new
                    {
                        block = "throttle",
                        id,
                        on,
                        kind,
                        volts = (double[])[5, 18],
                    },
            }
        );
        var isDirect = Chance(0.25);
        if (isDirect)
            blocks.Add(
                new
                {
                    block = "rectifier",
                    throttle = id,
                    kind = Pick("bridge", "half"),
                    cell = "selenium",
                }
            );
        return (id, isDirect, kind is "roller" or "shoe");
    }

    private void Levers(List<(string Id, bool IsDirect, bool Slides)> throttles)
    {
        var plain = throttles.Where(t => !t.IsDirect).ToList();
        var isShared = plain.Count > 1 && Chance(0.3);
        if (isShared)
            blocks.Add(
                new
                {
                    block = "whistle",
                    throttle = plain.Select(t => t.Id),
                    steps = dice.Next(1, 3),
                }
            );
        foreach (var t in throttles)
        {
            if (Chance(0.3))
                blocks.Add(new { block = "range", throttle = t.Id });
            if (!t.IsDirect && !isShared && Chance(0.5))
                blocks.Add(
                    new
                    {
                        block = "whistle",
                        throttle = t.Id,
                        steps = dice.Next(1, 3),
                        from = t.Slides && Chance(0.3) ? "winding" : "own",
                    }
                );
            if (Chance(0.6))
                blocks.Add(
                    new
                    {
                        block = "direction",
                        throttle = t.Id,
                        kind = t.IsDirect ? "reverses" : Pick("interrupts", "rotary"),
                    }
                );
        }
    }

    private void Rest(List<string> posts, List<string> starts, List<(string Id, bool IsDirect, bool Slides)> throttles)
    {
        if (posts.Count > 0 && Chance(0.3))
            blocks.Add(
                new
                {
                    block = "rectifier",
                    kind = "half",
                    post = "n",
                    from = posts[0],
                    ohms = 1.5,
                }
            );
        foreach (var place in (string[])["common", "primary", "throttle"])
            if ((place != "throttle" || throttles.Count > 0) && Chance(0.4))
                blocks.Add(
                    new
                    {
                        block = "breaker",
                        @in = place,
                        amps = 6,
                    }
                );
        if (posts.Count > 1 && Chance(0.3))
            blocks.Add(
                new
                {
                    block = "breaker",
                    @in = posts[1],
                    amps = 3,
                }
            );
        if (posts.Count > 0 && Chance(0.5))
            blocks.Add(new { block = "pilot", across = (string[])[posts[0], starts[0]] });
        else if (Chance(0.5))
        {
            blocks.Add(
                new
                {
                    block = "winding",
                    id = "glow",
                    volts = 6.3,
                }
            );
            blocks.Add(new { block = "pilot", across = "glow" });
        }
        if (Chance(0.3))
            blocks.Add(new { block = "bond", post = starts[0] });
    }

    private static string Letter(int n) => ((char)('a' + n)).ToString();
}
