using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>Entries of two benches that contradict each other were looked at, and all of them stay as they are.</summary>
/// <param name="Between">The entries.</param>
/// <param name="Words">What was answered.</param>
public sealed record Settled(ImmutableArray<Guid> Between, string Words) : Fact;
