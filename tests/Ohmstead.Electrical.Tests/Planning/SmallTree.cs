using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>Trees of so few steps that every set of them can be tried. A step of cost c takes c minutes, at 60 money an hour.</summary>
internal static class SmallTree
{
    public const double Rate = 60;

    public static TakeApartStep Step(string id, double cost, string[] after, params string[][] any) =>
        new(id, id, [.. after], [.. any.Select(g => g.ToImmutableArray())], cost, 0, 0, 0, [], "", 0);

    public static string Id(int n) => "s" + n.ToString("D2", CultureInfo.InvariantCulture);

    /// <summary>Steps of whole costs from 1 to 9 that need one before them in one case of three, and one of two groups in <paramref name="groups"/> of ten.</summary>
    public static ImmutableArray<TakeApartStep> Random(int seed, int count, int groups)
    {
        var dice = new Random(seed);
        string Before(int n) => Id(dice.Next(n));
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(n =>
                    Step(
                        Id(n),
                        1 + dice.Next(9),
                        n > 0 && dice.Next(3) == 0 ? [Before(n)] : [],
                        n > 1 && dice.Next(10) < groups
                            ?
                            [
                                [Before(n), Before(n)],
                                [Before(n)],
                            ]
                            : []
                    )
                ),
        ];
    }

    public static StepTree Of(ImmutableArray<TakeApartStep> steps) => new(steps, Rate, ImmutableHashSet<string>.Empty);

    /// <summary>The least cost of a set that holds these steps and can be done in some order.</summary>
    public static double Cheapest(ImmutableArray<TakeApartStep> steps, string[] parts)
    {
        var best = double.PositiveInfinity;
        for (var set = 0; set < 1 << steps.Length; set++)
        {
            var chosen = steps.Where((_, n) => (set >> n & 1) != 0).ToList();
            if (parts.All(p => chosen.Exists(s => s.Id == p)) && chosen.Sum(s => s.MinutesOut) < best && CanBeDone(chosen))
                best = chosen.Sum(s => s.MinutesOut);
        }
        return best;
    }

    public static bool CanBeDone(IReadOnlyCollection<TakeApartStep> chosen)
    {
        var done = new HashSet<string>(StringComparer.Ordinal);
        bool IsNext(TakeApartStep s) =>
            !done.Contains(s.Id) && s.After.All(done.Contains) && (s.AfterAny.IsEmpty || s.AfterAny.Any(g => g.All(done.Contains)));
        while (chosen.FirstOrDefault(IsNext) is { } next)
            done.Add(next.Id);
        return done.Count == chosen.Count;
    }
}
