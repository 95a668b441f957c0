using System.Globalization;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis.Hypotheses;

/// <summary>Fault classes that are there together, in order of number, each with its size as a share of its logarithmic range.</summary>
internal sealed record Members(FaultClass[] Classes, double[] Shares)
{
    /// <summary>Nothing is wrong.</summary>
    public static Members None { get; } = new([], []);

    public int Count => Classes.Length;

    /// <summary>Sum of the log prior odds.</summary>
    public double LogPrior => Classes.Sum(c => c.LogOdds);

    /// <summary>Which classes they are, whatever their sizes.</summary>
    public string Key => string.Join(',', Classes.Select(c => c.Number.ToString(CultureInfo.InvariantCulture)));

    public Fault[] Faults()
    {
        var faults = new Fault[Classes.Length];
        for (var k = 0; k < faults.Length; k++)
            faults[k] = Classes[k].At(Shares[k]);
        return faults;
    }

    public bool Contains(FaultClass c) => Array.IndexOf(Classes, c) >= 0;

    /// <summary>True when a class may stand beside all of them.</summary>
    public bool CanAdd(FaultClass c)
    {
        foreach (var other in Classes)
            if (!other.CanStandBeside(c))
                return false;
        return true;
    }

    /// <summary>True when a fault without a size moves a reading: it may lay open what was hidden there.</summary>
    public bool AreRewired(int reading)
    {
        foreach (var c in Classes)
            if (!c.HasSize && c.Moves[reading])
                return true;
        return false;
    }

    /// <summary>ln of the prior density of all their sizes.</summary>
    public double LogDensity()
    {
        var density = 0.0;
        for (var k = 0; k < Classes.Length; k++)
            density += Classes[k].LogDensity(Shares[k]);
        return density;
    }

    /// <summary>The same with other sizes.</summary>
    public Members At(double[] shares) => this with { Shares = shares };

    /// <summary>The same with the k-th at another size.</summary>
    public Members At(int k, double share)
    {
        var shares = (double[])Shares.Clone();
        shares[k] = share;
        return At(shares);
    }

    /// <summary>One more.</summary>
    public Members With(FaultClass c, double share)
    {
        var at = 0;
        while (at < Classes.Length && Classes[at].Number < c.Number)
            at++;
        return new([.. Classes[..at], c, .. Classes[at..]], [.. Shares[..at], share, .. Shares[at..]]);
    }

    /// <summary>All but the k-th.</summary>
    public Members Without(int k) => new([.. Classes[..k], .. Classes[(k + 1)..]], [.. Shares[..k], .. Shares[(k + 1)..]]);
}
