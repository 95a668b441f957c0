namespace Ohmstead.Workshop.Journal;

/// <summary>A stage of the job was closed, or opened again.</summary>
public sealed record StageClosed(Stage Stage, bool IsClosed, string Words) : Fact;

/// <summary>The stages of the job, in their order.</summary>
public enum Stage
{
    /// <summary>Intake and look-over.</summary>
    LookOver,

    /// <summary>Readings.</summary>
    Readings,

    /// <summary>Findings and repair.</summary>
    Findings,

    /// <summary>Taking apart and putting back together.</summary>
    TakingApart,

    /// <summary>The wiring recorded, and the check before mains.</summary>
    Wiring,

    /// <summary>What is tested against limits before it goes back.</summary>
    Tests,

    /// <summary>Papers and handing back.</summary>
    Papers,
}
