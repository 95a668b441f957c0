using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Electrical.Planning;

/// <summary>Which readings discriminate the right wiring from which mistakes, and the shortest list that does so for every mistake for which it can be done.</summary>
internal sealed class Discrimination
{
    /// <summary>One standard deviation: five of six rightly wired units rule the mistake out.</summary>
    private const double Quantile = 1;

    /// <summary>Even an unlikely mistake must lose half of its odds [nats].</summary>
    private const double LeastNats = 0.7;

    /// <summary>Where all readings together hardly do, the list has to come this near to them.</summary>
    private const double NearlyAll = 0.99;

    private readonly MistakeTable table;
    private readonly double[] minutes;
    private readonly double[] needed;
    private readonly bool[] discriminated;
    private ImmutableArray<RewireReading>? list;

    /// <param name="wiring">Says which mistakes are dangerous: these must be told more surely.</param>
    public Discrimination(MistakeTable table, Wiring wiring)
    {
        this.table = table;
        bool IsDangerous(Mistake x) => x.Sizes.Any(s => wiring.IsDangerous(x.Make(table.Set.Model.Sheet, s)));
        double[] least =
        [
            .. table.Mistakes.Select(x =>
                NeededFor(x.Percent / 100, IsDangerous(x) ? RewireCheck.RuledOutDangerous : RewireCheck.RuledOut)
            ),
        ];
        minutes = [.. Enumerable.Range(0, table.Set.Count).Select(r => table.SpecOf(r).Minutes)];
        int[] all = [.. Enumerable.Range(0, table.Set.Count)];
        var whole = table.Mistakes.Select((_, m) => Distance(m, all)).ToArray();
        discriminated = [.. table.Mistakes.Select((x, m) => whole[m] >= least[m])];
        needed = [.. table.Mistakes.Select((x, m) => Math.Max(least[m], Math.Min(ToBeFound(x.Percent / 100), NearlyAll * whole[m])))];
    }

    /// <summary>True when all readings together discriminate the mistake from the right wiring.</summary>
    public bool Discriminates(int mistake) => discriminated[mistake];

    /// <summary>
    /// The shortest list found: the reading that tells most for its minutes comes in until all is told, then each is left
    /// out again that the others can do without, the longest first.
    /// </summary>
    public ImmutableArray<RewireReading> ShortestList()
    {
        if (list is { } known)
            return known;
        var chosen = new List<int>();
        var open = Enumerable.Range(0, needed.Length).Where(Discriminates).ToList();
        while (open.Count > 0)
        {
            var lacks = open.Select(m => Lack(m, chosen)).ToArray();
            var best = Enumerable
                .Range(0, table.Set.Count)
                .Except(chosen)
                .MaxBy(r => open.Select((m, n) => lacks[n] - Lack(m, [.. chosen, r])).Sum() / Minutes(r, chosen));
            chosen.Add(best);
            open.RemoveAll(m => Lack(m, chosen) <= 0);
        }
        foreach (var r in chosen.OrderByDescending(r => Minutes(r, chosen.Where(c => c != r))).ThenByDescending(r => r).ToList())
        {
            var rest = chosen.Where(c => c != r).ToList();
            if (Enumerable.Range(0, needed.Length).Where(Discriminates).All(m => Lack(m, rest) <= 0))
                chosen = rest;
        }
        chosen.Sort();
        list = [.. chosen.Select((r, n) => new RewireReading(table.SpecOf(r), Minutes(r, chosen.Take(n)), Shows(r, chosen)))];
        return list.Value;
    }

    /// <summary>What a reading of the list shows by itself, and what the others do not show without it: never nothing, or it would not be in it.</summary>
    private ImmutableArray<Mistake> Shows(int r, List<int> chosen)
    {
        var others = chosen.Where(c => c != r).ToList();
        return
        [
            .. Enumerable
                .Range(0, needed.Length)
                .Where(m => Distance(m, [r]) >= needed[m] || (Discriminates(m) && Lack(m, others) > 0))
                .Select(m => table.Mistakes[m]),
        ];
    }

    /// <summary>Minutes of a reading after others: the first behind a step pays for what is not open yet.</summary>
    private double Minutes(int r, IEnumerable<int> others)
    {
        var sheet = table.Set.Model.Sheet;
        return minutes[r] + Gates.OpeningMinutes(sheet, [table.SpecOf(r).Access], others.Select(o => table.SpecOf(o).Access));
    }

    /// <summary>What is missing of the square distance that tells a mistake, as a share; 0 or less when it is told.</summary>
    private double Lack(int m, List<int> chosen) => chosen.Count == 0 ? 1 : Math.Max(0, 1 - (Distance(m, [.. chosen]) / needed[m]));

    /// <summary>
    /// The squared distance in deviations between right and wrong, at the size where they are nearest. Each of n readings
    /// counts for no more than a slip of the probe leaves of it.
    /// </summary>
    private double Distance(int m, int[] of)
    {
        if (of.Length == 0)
            return 0;
        return table.Wrong[m].Min(shown => RewireWeights.Square(table.Law(of, shown), of, table.Right, shown));
    }

    /// <summary>The squared distance at which a mistake of this chance, when it is there, is likelier than none.</summary>
    private static double ToBeFound(double chance) => Squared(Math.Log((1 - chance) / chance));

    /// <summary>The squared distance at which five in six rightly wired units rule out a mistake of this chance.</summary>
    /// <param name="ruledOut">Probability below which it is.</param>
    private static double NeededFor(double chance, double ruledOut) =>
        Squared(Math.Max(LeastNats, Math.Log(chance / (1 - chance) / ruledOut)));

    /// <summary>The squared distance that moves odds by so many nats, but for units beyond <see cref="Quantile"/>.</summary>
    private static double Squared(double nats)
    {
        var distance = Quantile + Math.Sqrt((Quantile * Quantile) + (2 * nats));
        return distance * distance;
    }
}
