namespace Ohmstead.Workshop.Journal;

/// <summary>A step of taking apart was undone: its pieces are in the unit again.</summary>
/// <param name="Step">Id of the take-apart step.</param>
/// <param name="Old">Pieces that went back as they came off.</param>
/// <param name="New">New pieces in the place of old ones.</param>
/// <param name="Why">Why the two do not make up what came off; empty when they do.</param>
/// <param name="By">Who answers for that.</param>
public sealed record PutBack(string Step, int Old, int New, string Why, string By) : Fact;
