namespace Ohmstead.Workshop.Journal;

/// <summary>An observation of the sheet was answered.</summary>
/// <param name="ObservationId">The sheet's id of it.</param>
public sealed record SignAnswered(string ObservationId, Answer Answer) : Fact;

/// <summary>What a question of the look-over was answered with.</summary>
public enum Answer
{
    /// <summary>Not known.</summary>
    Unsure,

    /// <summary>Seen, heard, felt or told.</summary>
    Yes,

    /// <summary>Looked for and not there.</summary>
    No,
}
