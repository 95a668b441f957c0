namespace Ohmstead.Workshop.Journal;

/// <summary>A finding was judged by hand.</summary>
/// <param name="Element">Element or slider.</param>
/// <param name="Mode">Fault mode.</param>
public sealed record FindingJudged(string Element, string Mode, Judgement Judgement, string Words) : Fact;

/// <summary>What the hand and the eye say of a finding.</summary>
public enum Judgement
{
    /// <summary>No longer judged.</summary>
    Open,

    /// <summary>Seen to be so.</summary>
    Confirmed,

    /// <summary>Seen not to be so.</summary>
    Dismissed,
}
