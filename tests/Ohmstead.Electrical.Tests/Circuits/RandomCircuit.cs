using System.Text.Json.Nodes;
using CsCheck;

namespace Ohmstead.Electrical.Tests.Circuits;

/// <summary>
/// A connected network of resistances and windings on one or two cores, drawn from a seed. Every winding has a lead
/// resistor of its own ("r-" and its id) that shows its current, and every core an open search winding ("search-" and its id)
/// that shows its induced voltage, so that all losses can be read at terminals.
/// </summary>
internal sealed class RandomCircuit
{
    private readonly Random random;
    private readonly SheetDraft draft = new();
    private readonly int nodes;

    private RandomCircuit(int seed, bool hasNonlinearParts)
    {
        Seed = seed;
        random = new Random(seed);
        nodes = random.Next(3, 9);
        for (var n = 1; n < nodes; n++)
            Resistor(Name("r", n), Node(random.Next(n)), Node(n));
        for (var n = 0; n < random.Next(1, nodes); n++)
            Resistor(Name("x", n), AnyPair());
        for (var c = 0; c < random.Next(1, 3); c++)
            AddCore(Name("core-", c), hasNonlinearParts);
        (One, Other, SomeOhms) = (AnyPair(), AnyPair(), Between(0.1, 100));
        if (!hasNonlinearParts)
            return;
        for (var n = 0; n < random.Next(1, 3); n++)
            draft.Element(
                "lamp",
                Name("lamp", n),
                Node(0),
                Node(random.Next(1, nodes)),
                new { volts = Between(6, 60), amps = Between(0.05, 0.5) }
            );
        for (var n = 0; n < random.Next(0, 3); n++)
        {
            var (a, b) = AnyPair();
            draft.Element(
                "rectifier",
                Name("disc", n),
                a,
                b,
                new
                {
                    saturationAmps = Between(5e-4, 5e-3),
                    slopeVolts = Between(0.06, 0.2),
                    seriesOhms = Between(0.05, 0.5),
                    leakageOhms = Between(50, 500),
                }
            );
        }
    }

    /// <summary>What dissipates: two terminals, and the watts for the square of the volts between them (a lead's with its winding's).</summary>
    public List<(string From, string To, double WattsPerSquareVolt)> Losses { get; } = [];

    /// <summary>Cores: the search winding's ends, its turns over those of the reference winding, and the loss resistance.</summary>
    public List<(string From, string To, double Ratio, double LossOhms)> Cores { get; } = [];

    public int Seed { get; }

    public object Source { get; } = new
    {
        from = "n0",
        to = "n1",
        volts = 100,
    };

    public JsonObject Json() => draft.Json();

    public BenchUnit Unit() => draft.Unit();

    /// <summary>Circuits of fixed resistances and cores.</summary>
    public static Gen<RandomCircuit> Linear { get; } = Gen.Int[0, 1_000_000].Select(seed => new RandomCircuit(seed, false));

    /// <summary>Circuits with lamps, excitation tables and perhaps rectifiers.</summary>
    public static Gen<RandomCircuit> Any { get; } = Gen.Int[0, 1_000_000].Select(seed => new RandomCircuit(seed, true));

    /// <summary>Two different nodes.</summary>
    public (string A, string B) One { get; }

    /// <summary>Two more; perhaps the same.</summary>
    public (string A, string B) Other { get; }

    public double SomeOhms { get; }

    public override string ToString() => Name("seed ", Seed);

    private (string A, string B) AnyPair()
    {
        var a = random.Next(nodes);
        var b = random.Next(nodes - 1);
        return (Node(a), Node(b < a ? b : b + 1));
    }

    private double Between(double low, double high) => low * Math.Pow(high / low, random.NextDouble());

    private static string Name(string kind, int n) => FormattableString.Invariant($"{kind}{n}");

    private static string Node(int n) => Name("n", n);

    private void Resistor(string id, (string A, string B) ends) => Resistor(id, ends.A, ends.B);

    private void Resistor(string id, string a, string b)
    {
        var ohms = Between(0.5, 500);
        draft.Resistor(id, a, b, ohms);
        Losses.Add((a, b, 1 / ohms));
    }

    private void AddCore(string id, bool hasTable)
    {
        var (lossOhms, turns) = (Between(300, 5000), Math.Round(Between(100, 600)));
        if (hasTable && random.Next(2) == 0)
            draft.Core(
                id,
                $"{id}-w0",
                lossOhms,
                [
                    [0, 0],
                    [40, Between(0.01, 0.05)],
                    [80, Between(0.06, 0.2)],
                    [120, Between(0.3, 1)],
                ]
            );
        else
            draft.Core(id, $"{id}-w0", lossOhms, Between(0.3, 5));
        for (var n = 0; n < random.Next(2, 4); n++)
        {
            var (a, b) = n == 0 ? ("n0", "n1") : AnyPair();
            var winding = Name($"{id}-w", n);
            var (copper, lead) = (Between(0.01, 3), Between(0.05, 10));
            draft.Winding(winding, $"{winding}-start", b, n == 0 ? turns : Math.Round(Between(10, 300)), copper, Between(1e-5, 5e-3), id);
            draft.Resistor($"r-{winding}", a, $"{winding}-start", lead);
            Losses.Add((a, $"{winding}-start", (copper + lead) / lead / lead));
        }
        const double searchTurns = 50;
        draft.Winding($"search-{id}", $"{id}-s1", $"{id}-s2", searchTurns, 0.1, 0, id);
        Cores.Add(($"{id}-s1", $"{id}-s2", searchTurns / turns, lossOhms));
    }
}
