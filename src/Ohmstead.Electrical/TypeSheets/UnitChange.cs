using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>One thing in which a unit differs from its sheet.</summary>
/// <param name="Path">Where it was read, for what is wrong with it.</param>
public abstract record UnitChange(string Path);

/// <summary>Another part in the place of the one of the same id.</summary>
public sealed record PartReplaced(string Path, NewPart Part) : UnitChange(Path);

/// <summary>A part where there was none.</summary>
public sealed record PartAdded(string Path, NewPart Part) : UnitChange(Path);

/// <summary>A part taken out.</summary>
public sealed record PartRemoved(string Path, string Element) : UnitChange(Path);

/// <summary>An end on another terminal.</summary>
/// <param name="End"><c>element.from</c>, <c>element.to</c> or, of a winding, <c>element.tap-1</c>.</param>
public sealed record EndMoved(string Path, string End, string Terminal) : UnitChange(Path);

/// <summary>A new part of the same sort: it fails less often than an old one.</summary>
/// <param name="Element">Element or slider.</param>
public sealed record PartRenewed(string Path, string Element) : UnitChange(Path);

/// <summary>A part soldered again: it may be wired wrong.</summary>
/// <param name="Element">Element or slider.</param>
public sealed record PartRewired(string Path, string Element) : UnitChange(Path);

/// <summary>A part that is not in the sheet, and what it and its sliders are called.</summary>
public sealed record NewPart(Element Element, ImmutableDictionary<string, string> Titles);
