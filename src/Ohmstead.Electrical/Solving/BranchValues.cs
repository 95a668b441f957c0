using System.Numerics;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>The resistances and impedances of branches from the numbers of a unit.</summary>
internal static class BranchValues
{
    /// <summary>
    /// What stands for no resistance at all: a wire of 0 Ω, a part of a winding without turns [Ω]. Smaller would cost the source's
    /// current its digits, larger would be felt.
    /// </summary>
    public const double LeastOhms = 1e-7;

    /// <summary>What an open path leaves [Ω].</summary>
    public const double OpenOhms = 1e7;

    private const double ShortedLoopOhms = 1e-3;
    private const double StuckClosedOhms = 0.01;

    /// <summary>Resistance of a branch to direct current [Ω]; not for junctions.</summary>
    public static double Ohms(ReadingCircuit circuit, in Branch b, UnitValues values) =>
        Math.Max(
            LeastOhms,
            b.Kind switch
            {
                BranchKind.Element or BranchKind.Series => values.Ohms[b.Index],
                BranchKind.Leakage or BranchKind.Capacitor => values.Second[b.Index],
                BranchKind.Slider => values.ContactOhms[b.Index] * b.X,
                BranchKind.Load => b.X,
                BranchKind.Contact => SwitchOhms(b, values),
                BranchKind.Lamp => ColdLampOhms(circuit.Lamps[b.Index], values),
                BranchKind.Segment => SegmentOf(circuit, b, values).Ohms,
                BranchKind.Junction => throw new System.Diagnostics.UnreachableException("The current of a junction follows its own law."),
            }
        );

    private static double SwitchOhms(in Branch b, UnitValues values) =>
        (values.Stuck[b.Index], b.X > 0) switch
        {
            (1, _) => values.Second[b.Index],
            (2, false) => StuckClosedOhms,
            (_, true) => values.Ohms[b.Index],
            _ => values.Second[b.Index],
        };

    private static double ColdLampOhms(in LampPlace lamp, UnitValues values) =>
        IsBroken(lamp, values) ? OpenOhms : 0.1 * lamp.Volts / lamp.Amps;

    /// <summary>True for a lamp whose filament is broken.</summary>
    public static bool IsBroken(in LampPlace lamp, UnitValues values) => lamp.Element >= 0 && values.Flag[lamp.Element];

    /// <summary>
    /// A part of a winding: resistance at the state's temperature [Ω], leakage inductance [H] and turns with their sign.
    /// Shorted turns are gone from the path, a break adds 10 MΩ below the contact where it is.
    /// </summary>
    public static (double Ohms, double Henries, double Turns) SegmentOf(ReadingCircuit circuit, in Branch b, UnitValues values)
    {
        var e = b.Index;
        var all = circuit.NominalTurns(e);
        var gone = values.ShortedTurns[e];
        var (low, high) = (Math.Max(b.X - gone, 0), Math.Max(b.Y - gone, 0));
        var share = (high - low) / all;
        var at = values.BrokenAtTurn[e];
        var isBroken = at <= 0 ? b.IsFirst : b.X < at && at <= b.Y;
        var copper = circuit.Model.WindingCores[e] >= 0 ? circuit.CopperFactor : 1;
        var ohms = (share * values.Ohms[e] * copper) + (isBroken ? OpenOhms : 0);
        var turns = share * values.Third[e];
        return (ohms, share * values.Second[e], values.Flag[e] && !circuit.ReversedChains[e] ? -turns : turns);
    }

    /// <summary>Admittance at a frequency of what is reactive and on no core [S].</summary>
    public static Complex Siemens(in Branch b, UnitValues values, double omegaRadPerSecond) =>
        b.Kind switch
        {
            BranchKind.Capacitor => CapacitorSiemens(b, values, omegaRadPerSecond),
            BranchKind.Load => SymmetricSystem.Reciprocal(new Complex(b.X, omegaRadPerSecond * b.Y)),
            _ => throw new System.Diagnostics.UnreachableException(b.Kind.ToString()),
        };

    /// <summary>Admittance of a capacitor, its series and leakage resistance with it [S].</summary>
    private static Complex CapacitorSiemens(in Branch b, UnitValues values, double omegaRadPerSecond)
    {
        var susceptance = omegaRadPerSecond * values.Third[b.Index];
        var series = new Complex(0, susceptance) / new Complex(1, susceptance * values.Ohms[b.Index]);
        return series + (1 / Math.Max(LeastOhms, values.Second[b.Index]));
    }

    /// <summary>The loop of shorted turns of a winding; false when none are.</summary>
    public static bool TryShortedLoop(
        ReadingCircuit circuit,
        int e,
        UnitValues values,
        out double ohms,
        out double henries,
        out double turns
    )
    {
        var share = values.ShortedTurns[e] / circuit.NominalTurns(e);
        ohms = ShortedLoopOhms + (share * values.Ohms[e] * circuit.CopperFactor);
        henries = share * values.Second[e];
        turns = share * values.Third[e];
        return share > 0;
    }
}
