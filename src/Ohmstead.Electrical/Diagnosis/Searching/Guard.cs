namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>
/// Whether the caller waits any longer: he may stop it, and his last guard may strike. Wherever it strikes something is left out, so it
/// stays struck, and the answer says so.
/// </summary>
internal sealed class Guard(DiagnosisOptions options)
{
    private bool hasStruck;

    /// <summary>True when it must come to an end at once.</summary>
    public bool IsOver
    {
        get
        {
            if (options.Cancellation.IsCancellationRequested)
                return true;
            if (!hasStruck && options.IsOverdue())
                hasStruck = true;
            return hasStruck;
        }
    }

    /// <summary>Why it stopped: the caller, the guard, or else what the search says.</summary>
    public SearchStop Or(SearchStop otherwise) =>
        options.Cancellation.IsCancellationRequested ? SearchStop.Cancelled
        : hasStruck ? SearchStop.TimeUp
        : otherwise;
}
