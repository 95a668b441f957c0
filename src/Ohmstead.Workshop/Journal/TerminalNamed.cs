namespace Ohmstead.Workshop.Journal;

/// <summary>A terminal of a unit whose type is not known was given a name; of one id the last name counts.</summary>
/// <param name="Id">"post-1", "lug-3": made here, kept for good.</param>
/// <param name="Name">As marked on the unit, or as the person calls it.</param>
/// <param name="IsPost">True for a post outside, which is read against the blades; false for a lug inside.</param>
public sealed record TerminalNamed(string Id, string Name, bool IsPost) : Fact;
