namespace Ohmstead.Workshop.Journal;

/// <summary>Entries for one unit.</summary>
public sealed record UnitEntries(Guid UnitId, IReadOnlyList<NewEntry> Entries);
