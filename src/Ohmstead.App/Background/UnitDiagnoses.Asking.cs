using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Background;

/// <content>When an answer is asked for.</content>
public sealed partial class UnitDiagnoses
{
    /// <summary>Asks for an answer that knows the last entry of a unit. Returns at once.</summary>
    public void Ask(Guid unitId)
    {
        jobs.Ask(unitId);
        var kept = units.GetOrAdd(unitId, _ => new KeptDiagnosis());
        // What was likely so far did not know the last entry.
        if (kept.State.SoFar is not null)
            Tell(unitId, kept, kept.State with { SoFar = null, Progress = 0 });
    }

    /// <summary>How long the unit that waits longest has been without an answer to its last entries.</summary>
    public TimeSpan Behind => jobs.Behind;

    /// <summary>
    /// Asks where what is known of a unit that was read does not know its last entry: after a new start of the program, or where another
    /// program entered it.
    /// </summary>
    public void AskOnce(BenchUnit unit)
    {
        if (
            Of(unit.Id) is { Progress: null, Trouble: "" } known
            && (known.Latest is null ? unit.CurrentReadings.Any() : known.Latest.Number < unit.LastNumber)
            && !jobs.IsBusy(unit.Id)
        )
            Ask(unit.Id);
    }

    /// <summary>What another program entered it works out itself. Here it is wanted too where a window shows the unit.</summary>
    private void AskWhereShown(Guid unitId)
    {
        foreach (
            var shown in unitId == Guid.Empty ? bench.LookedAt.Units
            : bench.LookedAt.Has(unitId) ? [unitId]
            : []
        )
            Ask(shown);
    }

    /// <summary>Another meter, or its test leads, may mean another answer; where nothing changed the last one stays.</summary>
    private void AskAll()
    {
        foreach (var id in units.Keys)
            Ask(id);
    }
}
