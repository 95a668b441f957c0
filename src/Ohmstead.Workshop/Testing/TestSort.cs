namespace Ohmstead.Workshop.Testing;

/// <summary>The sorts of tests with a limit, in the order of the list.</summary>
public enum TestSort
{
    /// <summary>Mains side to posts and to core, 500 V DC.</summary>
    Insulation,

    /// <summary>Each secondary to core.</summary>
    SecondaryToCore,

    /// <summary>The ground wire, where one is fitted.</summary>
    GroundWire,

    /// <summary>Watts with no load.</summary>
    NoLoadWatts,

    /// <summary>Volts of a post with no load.</summary>
    NoLoadVolts,

    /// <summary>Volts of a post with a load.</summary>
    LoadedVolts,

    /// <summary>How far a post’s volts drop to 5 A; worked out of the two before.</summary>
    Regulation,

    /// <summary>The whistle’s DC, first step.</summary>
    WhistleFirst,

    /// <summary>The whistle’s DC, second step.</summary>
    WhistleSecond,

    /// <summary>Touch current, the plug both ways.</summary>
    TouchCurrent,

    /// <summary>Seconds until a breaker opens.</summary>
    Breaker,

    /// <summary>Rise of the windings.</summary>
    HeatRun,
}
