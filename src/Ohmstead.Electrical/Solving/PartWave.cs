using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// What a rectifier sees over a period: the voltage across the whole of it and the current through it, leakage included, in the
/// direction in which it conducts. Peaks are those of a parabola through the sample that is farthest out and its neighbours.
/// </summary>
/// <param name="Volts">At even times of a period [V].</param>
/// <param name="Amps">At the same times [A].</param>
internal sealed record PartWave(IReadOnlyList<double> Volts, IReadOnlyList<double> Amps)
{
    /// <summary>The most volts backwards.</summary>
    public double PeakReverseVolts => Peak([.. Volts.Select(v => -v)]);

    /// <summary>The most amps, either way.</summary>
    public double PeakAmps => Math.Max(Peak([.. Amps]), Peak([.. Amps.Select(i => -i)]));

    /// <summary>Mean of volts times amps.</summary>
    public double Watts => Volts.Zip(Amps, (v, i) => v * i).Average();

    private static double Peak(double[] samples)
    {
        var at = Array.IndexOf(samples, samples.Max());
        var (before, top, after) = (samples[(at + samples.Length - 1) % samples.Length], samples[at], samples[(at + 1) % samples.Length]);
        var bend = (2 * top) - before - after;
        return bend > 0 ? top + ((after - before) * (after - before) / (8 * bend)) : top;
    }

    /// <summary>The wave of a rectifier in a reading's state; null where its circuit cannot be solved.</summary>
    /// <param name="reading">Of volts with alternating current; its own probes are left out.</param>
    public static PartWave? Of(UnitModel model, ReadingSpec reading, ReadingState state, string element)
    {
        var at = model.Sheet.Elements.Select((e, n) => (e, n)).First(p => p.e.Id == element).n;
        var part = (Rectifier)model.Sheet.Elements[at];
        var across = reading with { Quantity = Quantity.DcVolts, From = part.From, To = part.To };
        var circuit = CircuitBuilder.Build(model, across, state, new bool[model.Sheet.Elements.Length]);
        return new ReadingSolver().Wave(circuit, model.Nominal, at) is { } wave ? Through(part, wave.Across, wave.Junction) : null;
    }

    /// <summary>The whole part from the voltage of its junction, or from that across it where the junction hardly conducts and is a resistance.</summary>
    private static PartWave Through(Rectifier part, double[] across, double[]? junction)
    {
        var ohms = (part.SlopeVolts / part.SaturationAmps) + part.SeriesOhms;
        double[] amps = junction is null
            ? [.. across.Select(v => v / ohms)]
            : [.. junction.Select(v => part.SaturationAmps * (Math.Exp(v / part.SlopeVolts) - 1))];
        double[] volts = junction is null ? across : [.. junction.Zip(amps, (v, i) => v + (part.SeriesOhms * i))];
        return new(volts, [.. volts.Zip(amps, (v, i) => i + (v / part.LeakageOhms))]);
    }
}
