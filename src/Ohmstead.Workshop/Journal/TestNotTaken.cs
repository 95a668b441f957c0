namespace Ohmstead.Workshop.Journal;

/// <summary>A test that this unit does not need, or that could not be taken here.</summary>
/// <param name="Test">Which test.</param>
/// <param name="Title">What it is called, in words.</param>
/// <param name="Why">Why, in words: "no ground wire, by design".</param>
public sealed record TestNotTaken(string Test, string Title, string Why) : Fact;
