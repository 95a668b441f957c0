using System.Collections.Concurrent;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Web;

/// <summary>Which reading the bench asks for of each unit just now: what a second screen shows. It is kept in memory alone.</summary>
public sealed class AskedReadings
{
    private readonly ConcurrentDictionary<Guid, (string Reading, int Number)> asked = new();

    /// <summary>Another reading is asked for, on whichever screen. Called from any thread.</summary>
    public event Action<Guid>? Changed;

    /// <summary>A screen turned to a reading.</summary>
    /// <param name="seenNumber">Number of the last entry that the screen shows.</param>
    public void Ask(Guid unitId, string readingId, int seenNumber)
    {
        // Whoever only looks turns no page for the others.
        if (Asker.Now is { MayWork: false })
            return;
        asked[unitId] = (readingId, seenNumber);
        Changed?.Invoke(unitId);
    }

    /// <summary>The reading that is asked for, or the one that was entered after it was; null where there is neither.</summary>
    /// <returns>The reading, and whether its value is the one just entered.</returns>
    public (string Reading, bool IsEntered)? Of(BenchUnit unit)
    {
        var (isAsked, last) = (asked.TryGetValue(unit.Id, out var now), unit.CurrentReadings.LastOrDefault());
        if (last.Fact is not { } entered)
            return isAsked ? (now.Reading, false) : null;
        return !isAsked || last.Entry.Number > now.Number || now.Reading == entered.ReadingId
            ? (entered.ReadingId, true)
            : (now.Reading, false);
    }
}
