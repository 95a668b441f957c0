namespace Ohmstead.Workshop.Journal;

/// <summary>Free words.</summary>
public sealed record Noted(string Words) : Fact;

/// <summary>An earlier entry was wrong: it no longer counts; what is right stands here, or nothing when it was taken back.</summary>
/// <param name="EntryId">The entry that no longer counts.</param>
/// <param name="Instead">What counts in its place.</param>
public sealed record Corrected(Guid EntryId, Fact? Instead) : Fact;

/// <summary>An entry of a later version of the tool: kept word for word, not understood.</summary>
public sealed record Unread(string Text) : Fact;
