namespace Ohmstead.Workshop.Journal;

/// <summary>Entries that cannot stand in any journal: one of another unit, or a journal that does not begin with taking in. Nothing was written.</summary>
public sealed class JournalRefused(string message) : InvalidOperationException(message);
