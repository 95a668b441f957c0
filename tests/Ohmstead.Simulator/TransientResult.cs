namespace Ohmstead.Simulator;

/// <summary>What the last cycle showed: RMS of the alternating part and mean at the probes, current and power drawn.</summary>
internal sealed record TransientResult(double AcVolts, double DcVolts, double Amps, double Watts)
{
    /// <summary>What the watched rectifier saw, or null.</summary>
    public PartResult? Part { get; init; }

    public bool Near(TransientResult other, double relative)
    {
        double scale = Math.Max(Math.Abs(DcVolts), AcVolts);
        bool Close(double a, double b, double size) => Math.Abs(a - b) <= relative * size + 1e-9;
        return Close(AcVolts, other.AcVolts, scale)
            && Close(DcVolts, other.DcVolts, scale)
            && Close(Amps, other.Amps, Amps)
            && Close(Watts, other.Watts, Math.Abs(Watts));
    }
}
