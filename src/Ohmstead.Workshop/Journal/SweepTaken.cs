using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>A throttle was swept: what its post showed at one position after another.</summary>
/// <param name="ReadingId">The sheet's reading of that post with nothing on it.</param>
/// <param name="Control">The throttle.</param>
/// <param name="Points">From one stop to the other.</param>
/// <param name="Bench">What was really so meanwhile.</param>
public sealed record SweepTaken(string ReadingId, string Control, ImmutableArray<SweepPoint> Points, BenchState Bench) : Fact;

/// <summary>A place on the way of a throttle and what was read there.</summary>
/// <param name="Position">From 0 to 1.</param>
/// <param name="Volts">[V RMS].</param>
public sealed record SweepPoint(double Position, double Volts);
