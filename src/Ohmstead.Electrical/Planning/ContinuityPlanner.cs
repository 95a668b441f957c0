using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>
/// The ohmmeter checks that prove a net list: every terminal joined to its net's first, and every two nets that the meter can
/// tell apart on different leads in a check whose value a bridge between them would change. Groups of nets that nothing but
/// insulation joins are told apart by words of fewest changes (<see cref="SideCodes"/>, the least there is); inside a group,
/// where windings and breakers join the nets, gangs grow as long as a bridge still shows.
/// </summary>
public static class ContinuityPlanner
{
    private const double ClipMinutes = 0.5;
    private const double CheckMinutes = 0.25;

    /// <summary>Above this nothing but insulation joins two nets [Ω].</summary>
    private const double InsulationOhms = 1e6;

    /// <summary>Plans the checks.</summary>
    /// <param name="sheet">The circuit as planned.</param>
    /// <param name="controls">Positions of controls that are not at rest.</param>
    /// <param name="meter">The ohmmeter.</param>
    /// <remarks>Ask <see cref="PlanningBound.RefuseContinuity"/> first: a sheet of hundreds of parts takes minutes.</remarks>
    public static ContinuityPlan Plan(TypeSheet sheet, ImmutableDictionary<string, ControlPosition> controls, Meter meter)
    {
        var bench = new OhmmeterBench(sheet, controls, meter);
        var (nets, hubs) = (bench.Nets, bench.Nets.Select(n => n[0]).ToArray());
        var ohms = new double[nets.Length, nets.Length];
        for (var a = 0; a < nets.Length; a++)
        for (var b = 0; b < a; b++)
            ohms[a, b] = ohms[b, a] = Math.Min(bench.Ohms([hubs[a]], [hubs[b]]), bench.Ohms([hubs[b]], [hubs[a]]));
        var (within, open) = Within(bench, ohms, hubs, bench.Solutions + (PlanningBound.MostContinuity / sheet.Elements.Length));
        var gangs = Between(ohms, nets.Length).Concat(within).ToList();
        var checks = ImmutableArray.CreateBuilder<ContinuityCheck>();
        var clips = new Clips();
        void Add(bool isJoined, ImmutableArray<string> first, ImmutableArray<string> second) =>
            checks.Add(new(isJoined, first, second, bench.Ohms(first, second), (ClipMinutes * clips.Put(first, second)) + CheckMinutes));
        foreach (var net in nets)
        foreach (var terminal in net.Skip(1))
            Add(isJoined: true, [net[0]], [terminal]);
        foreach (var (first, second) in gangs)
            Add(isJoined: false, [.. first.Select(n => hubs[n])], [.. second.Select(n => hubs[n])]);
        var terminals = nets.Sum(n => n.Length);
        return new(checks.ToImmutable(), terminals * (terminals - 1) / 2, Left(bench, ohms, hubs, open)) { Solutions = bench.Solutions };
    }

    /// <summary>Gangs that tell the groups apart which only insulation joins.</summary>
    private static IEnumerable<(List<int> First, List<int> Second)> Between(double[,] ohms, int count)
    {
        var groups = Groups(count, (a, b) => ohms[a, b] < InsulationOhms);
        foreach (var check in SideCodes.Of([.. groups.Select(g => g.Count)]))
            yield return (
                [.. groups.Where((_, n) => !check[n]).SelectMany(g => g)],
                [.. groups.Where((_, n) => check[n]).SelectMany(g => g)]
            );
    }

    /// <summary>Gangs that tell apart the nets which windings join, until every pair that the meter can tell has been on both leads.</summary>
    /// <param name="mostSolutions">No further gang is begun beyond so many.</param>
    /// <returns>The gangs, and the pairs that were not reached.</returns>
    private static (List<(List<int> First, List<int> Second)> Gangs, HashSet<(int, int)> Open) Within(
        OhmmeterBench bench,
        double[,] ohms,
        string[] hubs,
        long mostSolutions
    )
    {
        var gangs = new List<(List<int>, List<int>)>();
        var open = new HashSet<(int, int)>();
        for (var a = 0; a < hubs.Length; a++)
        for (var b = 0; b < a; b++)
            if (ohms[a, b] < InsulationOhms && bench.ShowsBridge(ohms[a, b]))
                open.Add((b, a));
        while (open.Count > 0 && bench.Solutions < mostSolutions)
        {
            var (x, y) = open.MaxBy(p => (ohms[p.Item1, p.Item2], -p.Item1, -p.Item2));
            List<int> first = [x],
                second = [y];
            int Gain(int n, List<int> others) => others.Count(o => open.Contains((Math.Min(n, o), Math.Max(n, o))));
            foreach (var n in Enumerable.Range(0, hubs.Length).Where(n => n != x && n != y))
            {
                var (onFirst, onSecond) = (Gain(n, second), Gain(n, first));
                foreach (var (own, gain) in new[] { (first, onFirst), (second, onSecond) }.OrderByDescending(s => s.Item2))
                {
                    if (gain == 0)
                        break;
                    own.Add(n);
                    if (Shows(first, second))
                        break;
                    own.Remove(n);
                }
            }
            foreach (var a in first)
            foreach (var b in second)
                open.Remove((Math.Min(a, b), Math.Max(a, b)));
            gangs.Add((first, second));
        }
        return (gangs, open);
        bool Shows(List<int> first, List<int> second)
        {
            var (a, b) = (first.ConvertAll(n => hubs[n]), second.ConvertAll(n => hubs[n]));
            return bench.ShowsBridge(bench.Ohms(a, b)) && bench.ShowsBridge(bench.Ohms(b, a));
        }
    }

    private static ImmutableArray<ImmutableArray<string>> Left(
        OhmmeterBench bench,
        double[,] ohms,
        string[] hubs,
        HashSet<(int, int)> open
    ) =>
        [
            .. Groups(hubs.Length, (a, b) => open.Contains((Math.Min(a, b), Math.Max(a, b))) || !bench.ShowsBridge(ohms[a, b]))
                .Where(g => g.Count > 1)
                .Select(g => g.Select(n => hubs[n]).ToImmutableArray()),
            .. bench.Nets.SelectMany(net =>
                net.Skip(1).Where(t => !bench.ShowsLoose(net[0], t)).Select(t => ImmutableArray.Create(net[0], t))
            ),
        ];

    private static List<List<int>> Groups(int count, Func<int, int, bool> areOne)
    {
        var groups = new List<List<int>>();
        for (var n = 0; n < count; n++)
        {
            var own = groups.Where(g => g.Exists(o => areOne(o, n))).ToList();
            groups.RemoveAll(own.Contains);
            groups.Add([.. own.SelectMany(g => g), n]);
        }
        return groups;
    }

    /// <summary>Where the clips are. Which lead is called the first does not matter.</summary>
    private sealed class Clips
    {
        private HashSet<string> first = [];
        private HashSet<string> second = [];

        /// <summary>Puts the clips on; gives how many had to be put on or to change leads.</summary>
        public int Put(ImmutableArray<string> a, ImmutableArray<string> b)
        {
            var straight = a.Count(t => !first.Contains(t)) + b.Count(t => !second.Contains(t));
            var crossed = a.Count(t => !second.Contains(t)) + b.Count(t => !first.Contains(t));
            (first, second) = ([.. straight <= crossed ? a : b], [.. straight <= crossed ? b : a]);
            return Math.Min(straight, crossed);
        }
    }
}
