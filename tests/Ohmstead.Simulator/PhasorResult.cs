using System.Numerics;

namespace Ohmstead.Simulator;

/// <summary>A phasor solution at the operating point of the cores and lamps.</summary>
internal sealed record PhasorResult(
    double[] Settings,
    double[] SettingVolts,
    double ProbeVolts,
    double Amps,
    double Watts,
    double[] JunctionVolts,
    Complex[] InductorAmps
);
