namespace Ohmstead.Workshop.Journal;

/// <summary>A later version of its type sheet was made, and the unit keeps the one that it was measured with; or it takes the newest.</summary>
/// <param name="SheetId">The type.</param>
/// <param name="Version">The version; 0 for the newest.</param>
public sealed record SheetKept(string SheetId, int Version) : Fact;
