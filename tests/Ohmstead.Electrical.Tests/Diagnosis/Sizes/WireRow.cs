using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Sizes;

/// <summary>
/// Three wires in a row that may be poor, 0.4 to 30 Ω each on a logarithmic scale, and what an ohmmeter showed of parts of the row: what any
/// sizes predict is a sum, and what they are worth can be summed on a grid.
/// </summary>
internal sealed class WireRow
{
    public const double Least = 0.4;
    public const double Most = 30;
    private const double WireOhms = 0.01;
    private static readonly string[] Ids = ["w0", "w1", "w2"];

    /// <summary>By reading: the wires that it reads.</summary>
    private readonly int[][] read;

    /// <param name="taken">By reading: which wires, and the ohms that were shown.</param>
    /// <param name="meter">Of the ohms; null: 0.8 % and 0.05 Ω.</param>
    public WireRow((string Wires, double Ohms)[] taken, MeterError? meter = null, double wrongChance = 1e-9)
    {
        read = [.. taken.Select(t => t.Wires.Select(w => w - '0').ToArray())];
        var draft = WireBench.Parts(("w0", "n0", "n1", 1), ("w1", "n1", "n2", 1), ("w2", "n2", "n3", 1));
        string Node(int n) => FormattableString.Invariant($"n{n}");
        foreach (var (wires, _) in taken)
            draft = draft.Reading("r" + wires, "ohms", [Node(wires[0] - '0'), Node(wires[^1] - '0' + 1)]);
        var unit = draft.Unit();
        Pieces = new Pieces(
            unit,
            [.. taken.Select(t => WireBench.Value(unit, "r" + t.Wires, t.Ohms))],
            wrongChance,
            meter: meter is null ? null : new Meter(Meter.Usual.Errors.SetItem(Quantity.Ohms, meter))
        );
    }

    public Pieces Pieces { get; }

    public FaultClass Poor(int wire) => Pieces.Class(Ids[wire] + ":resistive");

    public static double Ohms(double share) => Least * Math.Pow(Most / Least, share);

    public static double Share(double ohms) => Math.Log(ohms / Least) / Math.Log(Most / Least);

    /// <summary>The first so many wires poor at some shares.</summary>
    public Members Set(params double[] shares) => Pieces.Set([.. shares.Select((s, w) => (Ids[w] + ":resistive", s))]);

    /// <summary>What the readings are on the meter's scale.</summary>
    public double[] Predicted(params double[] shares) =>
        [.. read.Select((wires, r) => Pieces.Evidence.Set.ToScale(r, wires.Sum(w => w < shares.Length ? Ohms(shares[w]) : WireOhms)))];

    /// <summary>ln of the mean of the likelihood over the sizes of the first so many wires, on a grid of so many cells each.</summary>
    public double LogMean(int wires, int cells, Spread spread)
    {
        var judge = Pieces.Judge(spread);
        var logs = new List<double>();
        var shares = new double[wires];
        void Add(int wire)
        {
            if (wire == wires)
            {
                logs.Add(judge.LogLikelihood(Predicted(shares)));
                return;
            }
            for (var n = 0; n < cells; n++)
            {
                shares[wire] = (n + 0.5) / cells;
                Add(wire + 1);
            }
        }
        Add(0);
        var most = logs.Max();
        return most + Math.Log(logs.Average(l => Math.Exp(l - most)));
    }
}
