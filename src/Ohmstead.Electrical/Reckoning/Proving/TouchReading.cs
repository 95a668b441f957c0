using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>Touch current as volts across a network that is like a person, read with the plug one way and the other.</summary>
/// <param name="Volts">Plug one way, other way.</param>
/// <param name="Network">Which network.</param>
/// <param name="Hertz">Of the supply.</param>
/// <param name="SupplyVolts">The line.</param>
/// <param name="EarthProved">False where the earth it is read against was not proved: then it says nothing.</param>
public sealed record TouchReading(ImmutableArray<double> Volts, string Network, double Hertz, double SupplyVolts, bool EarthProved)
{
    private const string Plain = "1500-ohm";
    private const string Shunted = "1500-ohm-0.15-uF";
    private const string Weighted = "weighted-500-ohm";

    /// <summary>Reads its fields.</summary>
    internal static TouchReading? Read(QuestionFields question)
    {
        if (question.Part("touch") is not { } fields)
            return null;
        var volts = fields.Numbers("volts", NumberRange.NotNegative);
        if (fields.Has("volts") && volts.Length != 2)
            fields.Report("volts", "is not two readings", "the plug one way, then the other way");
        var network = fields.OneOf("network", [Plain, Shunted, Weighted]);
        var hertz = network == Shunted ? fields.Number("hertz", NumberRange.Positive) : fields.Number("hertz", NumberRange.Positive, 60);
        return new(
            volts.Length == 2 ? volts : [0, 0],
            network,
            hertz,
            fields.Number("supplyVolts", NumberRange.Positive, 120),
            fields.Flag("earthProved", true)
        );
    }

    /// <summary>
    /// Milliamps for a volt: 1000/|Z|, |Z| = 1500/√(1 + (2πf·1500 Ω·0.15 µF)²) (key ul-101); of the weighted network I = U2/500 Ω
    /// (key iec-60990).
    /// </summary>
    public double MilliampsPerVolt =>
        Network switch
        {
            Weighted => 1000 / 500.0,
            Shunted => 1000 / 1500.0 * Math.Sqrt(1 + Math.Pow(2 * Math.PI * Hertz * 1500 * 0.15e-6, 2)),
            _ => 1000 / 1500.0,
        };

    /// <summary>From this share of the line’s volts on the network, it is no leak but a joint to the line (common practice, no source).</summary>
    private const double JointShare = 0.1;

    /// <summary>True where so much of the line lies across the network that something joins what was clipped on to the line.</summary>
    public bool IsJoined(double milliamps) => milliamps / 1000 * NetworkOhms >= JointShare * SupplyVolts;

    /// <summary>
    /// A capacitor from the line to the posts or the core that lets so much through: C = I/(2πf·V) [nF]. Null for a joint to the line: that
    /// holds only while the network takes little of the line’s volts.
    /// </summary>
    public double? Nanofarads(double milliamps) => IsJoined(milliamps) ? null : 1e6 * milliamps / (2 * Math.PI * Hertz * SupplyVolts);

    /// <summary>Ohms that the network is to the current, at its frequency: what it adds to the path [Ω].</summary>
    public double NetworkOhms => Network == Weighted ? TouchNetwork.Ohms(Hertz) : 1000 / MilliampsPerVolt;
}
