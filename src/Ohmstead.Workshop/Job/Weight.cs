namespace Ohmstead.Workshop.Job;

/// <summary>How much something weighs, drawn as a shape; a word always stands beside it.</summary>
public enum Weight
{
    /// <summary>No mark.</summary>
    None,

    /// <summary>As it should be: a disc.</summary>
    Good,

    /// <summary>Worth a look: a triangle.</summary>
    Look,

    /// <summary>Stop: a square.</summary>
    Stop,

    /// <summary>Not there: a ring.</summary>
    Absent,
}
