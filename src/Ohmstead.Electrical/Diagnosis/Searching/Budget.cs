using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>
/// What one search has spent, and may still. Work is counted and never timed, and asked about between pieces that all threads have
/// finished, so it hangs on no race.
/// </summary>
/// <param name="setting">What the search is made with; its work counts from here on.</param>
internal sealed class Budget(SearchSetting setting)
{
    /// <summary>Most sets settled in the end, and how many of them when the work allowed is done.</summary>
    private const int MostSettled = 16;
    private const int LeastSettled = 3;

    private readonly DiagnosisOptions options = setting.Options;
    private readonly long solvedBefore = setting.Workers.Solved;
    private readonly long workBefore = setting.Workers.Work;
    private int settled;

    /// <summary>Sets expanded so far.</summary>
    public int Expanded { get; private set; }

    public Pace Pace =>
        setting.Guard.IsOver ? Pace.Stop
        : IsWorkDone ? Pace.Hurry
        : Pace.GoOn;

    /// <summary>While the search is young or the readings few, the margin does not count.</summary>
    public bool IsYoung => Expanded < options.YoungExpanded || setting.Workers.Solved - solvedBefore < options.CheapSolutions;

    /// <summary>True when one more set may be expanded.</summary>
    public bool MayExpand => Expanded < options.MostExpanded && (Expanded < options.LeastExpanded || !IsWorkDone);

    /// <summary>Counts a set that is expanded.</summary>
    public void CountExpanded() => Expanded++;

    /// <summary>True when one more set may be settled; it is counted.</summary>
    public bool TrySettle()
    {
        var pace = Pace;
        if (pace == Pace.Stop || settled >= (pace == Pace.GoOn ? MostSettled : LeastSettled))
            return false;
        settled++;
        return true;
    }

    private bool IsWorkDone => (setting.Workers.Work - workBefore) * setting.Evidence.Set.Model.Sheet.Elements.Length >= options.MostWork;
}

/// <summary>How a search is to go on.</summary>
internal enum Pace
{
    /// <summary>There is work left.</summary>
    GoOn,

    /// <summary>The work allowed is done: only what an answer cannot do without.</summary>
    Hurry,

    /// <summary>At once.</summary>
    Stop,
}
