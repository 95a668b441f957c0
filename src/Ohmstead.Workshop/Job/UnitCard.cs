namespace Ohmstead.Workshop.Job;

/// <summary>A unit as it stands in a list: enough to know it and to go on with it.</summary>
/// <param name="Kind">Title of its type sheet.</param>
/// <param name="Photo">Hash of its first photo; empty for none.</param>
/// <param name="LastDone">The last thing done, in words.</param>
/// <param name="Next">What can be done next.</param>
/// <param name="IsHandedBack">True when it is back with its owner.</param>
public sealed record UnitCard(
    Guid Id,
    string Tag,
    string Kind,
    string SheetId,
    string Owner,
    string Photo,
    string LastDone,
    DateTimeOffset LastAt,
    NextThing Next,
    bool IsHandedBack
);

/// <summary>The next thing to do on a unit.</summary>
/// <param name="Action">What it is.</param>
/// <param name="Words">The button's words: "Take the reading: left post under load".</param>
/// <param name="Minutes">How long it takes [min].</param>
/// <param name="About">Reading, element or paper it is about.</param>
public sealed record NextThing(NextAction Action, string Words, double Minutes, string About);

/// <summary>Kinds of next things.</summary>
public enum NextAction
{
    /// <summary>Choose a type sheet.</summary>
    NameKind,

    /// <summary>Go on with the look-over.</summary>
    LookOver,

    /// <summary>Make the check before mains: a wire was moved.</summary>
    CheckWiring,

    /// <summary>Take a reading.</summary>
    TakeReading,

    /// <summary>Look at the findings and decide.</summary>
    JudgeFindings,

    /// <summary>Do a repair that was decided.</summary>
    Repair,

    /// <summary>Go on taking apart, on the way that was chosen.</summary>
    TakeApart,

    /// <summary>Put back what is off.</summary>
    PutBack,

    /// <summary>Make a paper.</summary>
    MakePaper,

    /// <summary>Nothing is left.</summary>
    Nothing,

    /// <summary>Hand it back.</summary>
    Return,

    /// <summary>Go on with the heat run that is on.</summary>
    HeatRun,

    /// <summary>Go on with the breaker that is being timed.</summary>
    TimeBreaker,
}
