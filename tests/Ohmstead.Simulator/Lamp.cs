namespace Ohmstead.Simulator;

/// <summary>A tungsten lamp: resistance by the RMS of its voltage, a tenth of the rated resistance when cold.</summary>
internal sealed record Lamp(int A, int B, double Volts, double Amps) : Part(A, B)
{
    public double Cold => 0.1 * Volts / Amps;

    public double Hot(double rms) => Math.Max(Cold, Volts / Amps * Math.Pow(rms / Volts, 0.45));
}
