namespace Ohmstead.Simulator;

/// <summary>What a netlist is written for.</summary>
internal enum Analysis
{
    /// <summary>Direct current, junctions in full.</summary>
    Direct,

    /// <summary>Direct current, junctions left out.</summary>
    Insulation,

    /// <summary>One frequency, junctions as small resistances.</summary>
    Phasor,

    /// <summary>In time, junctions in full.</summary>
    Transient,
}
