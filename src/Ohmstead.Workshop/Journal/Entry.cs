using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>
/// One line of a unit's journal: what was entered, when and by whom. A journal only grows; what was wrong is put right by a
/// later <see cref="Corrected"/> entry, so nothing that was entered is ever lost.
/// </summary>
/// <param name="Id">Made where the entry is made, so that sending it twice keeps it once.</param>
/// <param name="UnitId">The unit.</param>
/// <param name="Number">1, 2, 3… within the unit, given by the store; a merge numbers anew.</param>
/// <param name="At">When it was entered.</param>
/// <param name="By">Who, or which device: "bench", a name, "phone".</param>
/// <param name="Fact">What was entered.</param>
public sealed record Entry(Guid Id, Guid UnitId, int Number, DateTimeOffset At, string By, Fact Fact)
{
    /// <summary>The copy of the workshop that it was made at; empty where that was not kept yet.</summary>
    public string Bench { get; init; } = "";

    /// <summary>The entries that it was made after, where they are others than the one before it; null where it is that one.</summary>
    public ImmutableArray<Guid>? After { get; init; }
}

/// <summary>An entry that the store has not numbered yet.</summary>
public sealed record NewEntry(Guid Id, DateTimeOffset At, string By, Fact Fact)
{
    /// <summary>The copy of the workshop that it was made at, empty where nobody knows; null for the one that it is sent to.</summary>
    public string? Bench { get; init; }

    /// <summary>The entries that it was made after; null for all that the journal holds.</summary>
    public ImmutableArray<Guid>? After { get; init; }
}
