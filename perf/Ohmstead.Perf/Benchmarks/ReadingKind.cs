using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>The three ways in which a reading is solved.</summary>
internal enum ReadingKind
{
    /// <summary>Direct current.</summary>
    Direct,

    /// <summary>Alternating current, no rectifier conducting.</summary>
    Phasor,

    /// <summary>A rectifier conducts.</summary>
    Periodic,
}

/// <summary>Tells the kinds apart by solving.</summary>
internal static class ReadingKinds
{
    public static ReadingKind Of(ReadingCircuit circuit, UnitValues values, ReadingSolver solver)
    {
        if (circuit.IsDirect)
            return ReadingKind.Direct;
        return solver.Solve(circuit, values).IsPeriodic ? ReadingKind.Periodic : ReadingKind.Phasor;
    }

    public static string NameOf(ReadingKind kind) =>
        kind switch
        {
            ReadingKind.Direct => "direct current",
            ReadingKind.Phasor => "phasor",
            _ => "periodic",
        };
}
