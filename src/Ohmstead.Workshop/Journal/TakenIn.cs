namespace Ohmstead.Workshop.Journal;

/// <summary>A unit came in. The first entry of every journal.</summary>
/// <param name="Tag">What is written on the tag tied to it.</param>
/// <param name="SheetId">Its type sheet; empty while the kind is not known.</param>
/// <param name="Owner">Whose it is.</param>
/// <param name="Complaint">What the owner says, in their words.</param>
public sealed record TakenIn(string Tag, string SheetId, string Owner, string Complaint) : Fact;

/// <summary>The card of the unit was written anew: every field as it now stands.</summary>
/// <param name="Promised">When it was promised, in the owner's words.</param>
public sealed record CardChanged(string Tag, string SheetId, string Owner, string Contact, string Complaint, string Promised) : Fact;
