using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>Two conductors from a post to the track or the lamp.</summary>
/// <param name="GaugeAwg">Of the wire that is there.</param>
/// <param name="FeetOneWay">Its length one way.</param>
public sealed record LoadWire(int GaugeAwg, double FeetOneWay)
{
    private const double MetresPerFoot = 0.3048;

    /// <summary>Copper at 20 °C, 1/58 Ω·mm²/m (key iec-60028).</summary>
    private const double Resistivity = 1 / 58.0;

    /// <summary>Gauges that are proposed, the thinnest first.</summary>
    public static ImmutableArray<int> Gauges { get; } = [22, 20, 18, 16, 14, 12, 10];

    /// <summary>Amps that each carries: 18 to 12 AWG of NEC 400.5(A) as reprinted (key nec-400-5), the others common practice, no source.</summary>
    public static ImmutableSortedDictionary<int, double> UsualAmps { get; } =
        new Dictionary<int, double>
        {
            [22] = 3,
            [20] = 5,
            [18] = 10,
            [16] = 13,
            [14] = 18,
            [12] = 25,
            [10] = 30,
        }.ToImmutableSortedDictionary();

    /// <summary>Reads a post's wire.</summary>
    internal static LoadWire? Read(QuestionFields post) =>
        post.Part("wire") is { } wire ? new(wire.Whole("gaugeAwg", 0, 40), wire.Number("feetOneWay", NumberRange.NotNegative)) : null;

    /// <summary>Reads the table of amps, the usual one where nothing edits it.</summary>
    internal static ImmutableSortedDictionary<int, double> ReadAmps(QuestionFields fields)
    {
        var carries = UsualAmps;
        foreach (var (name, at) in fields.Named("carriesAmps"))
        {
            if (int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out var gauge) && gauge <= 40)
                carries = carries.SetItem(gauge, at.AsNumber(NumberRange.NotNegative));
            else
                at.Report("is no gauge", "a whole number of AWG, 0 to 40, is expected");
        }
        return carries;
    }

    /// <summary>Volts lost in both conductors; d = 0.127·92^((36 − n)/39) mm (key astm-b258).</summary>
    public double DropVolts(double amps, int gauge)
    {
        var millimetres = 0.127 * Math.Pow(92, (36 - gauge) / 39.0);
        return amps * Resistivity * 2 * FeetOneWay * MetresPerFoot / (Math.PI / 4 * millimetres * millimetres);
    }

    /// <summary>Amps that a gauge carries; one that the table does not name carries no more than the next thinner one of it.</summary>
    public static double Carries(ImmutableSortedDictionary<int, double> table, int gauge) =>
        table.Where(row => row.Key >= gauge).Select(row => (double?)row.Value).FirstOrDefault() ?? 0;
}
