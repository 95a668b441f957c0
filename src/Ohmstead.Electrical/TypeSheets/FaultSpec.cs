namespace Ohmstead.Electrical.TypeSheets;

/// <summary>One way in which a kind of element fails.</summary>
/// <param name="Mode">Its name in files.</param>
/// <param name="Does">What it changes.</param>
/// <param name="Percent">Chance of it in an unserviced unit [%]: common practice, no source; a sheet may override it.</param>
/// <param name="Min">Smallest size: Ω, a factor, or a share of the turns.</param>
/// <param name="Max">Largest size.</param>
public sealed record FaultSpec(
    string Mode,
    FaultChange Does,
    double Percent,
    SizeKind Size = SizeKind.None,
    double Min = 0,
    double Max = 0
);

/// <summary>What a fault changes in the numbers of a unit.</summary>
public enum FaultChange
{
    /// <summary>The resistance is its size [Ω].</summary>
    SetsOhms,

    /// <summary>The resistance is multiplied by its size.</summary>
    ScalesOhms,

    /// <summary>Nothing comes through.</summary>
    Opens,

    /// <summary>A wire lies across it.</summary>
    Bypasses,

    /// <summary>It is short inside.</summary>
    Shorts,

    /// <summary>The path that leaks across it has its size [Ω].</summary>
    Leaks,

    /// <summary>A winding is broken at a turn.</summary>
    BreaksAtTurn,

    /// <summary>Its size in turns of a winding is short-circuited.</summary>
    ShortsTurns,

    /// <summary>Its ends are exchanged.</summary>
    Reverses,

    /// <summary>A contact does not close.</summary>
    SticksOpen,

    /// <summary>A contact does not open.</summary>
    SticksClosed,
}

/// <summary>How the size of a fault is given.</summary>
public enum SizeKind
{
    /// <summary>The mode has no size.</summary>
    None,

    /// <summary>A resistance or a factor, log-uniform over its range.</summary>
    Continuous,

    /// <summary>Whole turns, at least 1, from 1 % to 6 % of the winding.</summary>
    WholeTurns,
}
