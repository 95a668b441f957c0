using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Hypotheses;

/// <summary>
/// Fault modes that no reading taken tells apart at equal size, searched as one. Its size runs over the union of their
/// ranges; where several ranges overlap their chances add up.
/// </summary>
internal sealed class FaultClass
{
    private readonly ImmutableArray<int> elementOf;
    private readonly bool hasShared;
    private readonly double logMin;
    private readonly double logMax;

    public FaultClass(int number, IEnumerable<FaultMode> modes, double[] odds, ImmutableArray<int> elementOf)
    {
        (Number, this.elementOf) = (number, elementOf);
        Modes = [.. modes.OrderByDescending(m => odds[m.Number]).ThenBy(m => m.Number)];
        Odds = [.. Modes.Select(m => odds[m.Number])];
        hasShared = Modes.Any(m => m.IsShared);
        Elements = [.. Modes.Select(m => elementOf[m.Number]).Distinct()];
        LogOdds = Math.Log(Math.Max(Odds.Sum(), 1e-300));
        (Min, Max) = (Modes.Min(m => m.Min), Modes.Max(m => m.Max));
        HasSize = Lead.HasSize;
        IsDiscrete = Lead.Size == TypeSheets.SizeKind.WholeTurns && Max - Min < 6;
        if (HasSize)
            (logMin, logMax) = (Math.Log(Min), Math.Log(Max));
        PointShares =
            !HasSize ? [0]
            : IsDiscrete ? [.. Enumerable.Range((int)Min, (int)(Max - Min) + 1).Select(k => (Math.Log(k) - logMin) / (logMax - logMin))]
            : [.. Enumerable.Range(0, CurvePoints).Select(k => k / (CurvePoints - 1.0))];
    }

    /// <summary>Points on the curve of a size.</summary>
    public const int CurvePoints = 7;

    public int Number { get; }

    public ImmutableArray<FaultMode> Modes { get; }

    public FaultMode Lead => Modes[0];

    public ImmutableArray<double> Odds { get; }

    public ImmutableArray<int> Elements { get; }

    public double LogOdds { get; }

    public double Min { get; }

    public double Max { get; }

    public bool HasSize { get; }

    /// <summary>A few whole turns: each size is tried by itself.</summary>
    public bool IsDiscrete { get; }

    /// <summary>A size to be fitted.</summary>
    public bool IsContinuous => HasSize && !IsDiscrete;

    public double[] PointShares { get; }

    /// <summary>True when it may be there together with another: an element has one fault at a time.</summary>
    public bool CanStandBeside(FaultClass other) =>
        other != this
        && !(other.Elements.Length == 1 && Elements.Length == 1 && other.Elements[0] == Elements[0])
        && (!(hasShared || other.hasShared) || Modes.Any(a => other.Modes.Any(b => !AreOfOnePart(a, b))));

    private bool AreOfOnePart(FaultMode a, FaultMode b) => FaultCatalogue.Clash(a, b, elementOf);

    /// <summary>True when it moves a reading that another moves, so that it could stand in the other's stead.</summary>
    public bool Touches(FaultClass other)
    {
        for (var r = 0; r < Moves.Length; r++)
            if (Moves[r] && other.Moves[r])
                return true;
        return false;
    }

    /// <summary>Displacement of the readings of the sound unit at <see cref="PointShares"/>.</summary>
    public double[][] Curve { get; set; } = [];

    /// <summary>The readings that it moves in the sound unit.</summary>
    public bool[] Moves { get; set; } = [];

    public double SizeAt(double share) => HasSize ? Math.Exp(logMin + (share * (logMax - logMin))) : Lead.MiddleSize;

    public Fault At(double share) => new(Lead, Lead is { Kind: ElementKind.Winding, Mode: "open" } ? 0 : SizeAt(share));

    /// <summary>Log of the prior density of the size over the share [0..1]; 0 when there is one range.</summary>
    public double LogDensity(double share)
    {
        if (!IsContinuous || Modes.Length == 1)
            return 0;
        var at = logMin + (share * (logMax - logMin));
        var (density, all) = (0.0, 0.0);
        for (var k = 0; k < Modes.Length; k++)
        {
            all += Odds[k];
            if (Covers(Modes[k], at))
                density += Odds[k] / Math.Log(Modes[k].Max / Modes[k].Min);
        }
        return Math.Log(Math.Max(density * (logMax - logMin) / all, 1e-6));
    }

    /// <summary>How the class's probability divides among its modes when the size is known to lie about a share.</summary>
    public double[] SharesOfModes(double share, double deviation)
    {
        var shares = new double[Modes.Length];
        foreach (var step in (ReadOnlySpan<double>)[-1.2, 0, 1.2])
        {
            var at = logMin + (Math.Clamp(share + (step * deviation), 0, 1) * (logMax - logMin));
            for (var k = 0; k < Modes.Length; k++)
                if (!IsContinuous)
                    shares[k] += Odds[k];
                else if (Covers(Modes[k], at))
                    shares[k] += Odds[k] / Math.Log(Modes[k].Max / Modes[k].Min);
        }
        var sum = shares.Sum();
        return sum > 0 ? [.. shares.Select(s => s / sum)] : [.. Odds.Select(o => o / Odds.Sum())];
    }

    private static bool Covers(FaultMode m, double logSize) => logSize >= Math.Log(m.Min) - 1e-9 && logSize <= Math.Log(m.Max) + 1e-9;
}
