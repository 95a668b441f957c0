using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Outlines;

namespace Ohmstead.Electrical.Drafting;

/// <summary>From an outline to a sheet. Method: docs/methods/outline.md.</summary>
public static class Drafter
{
    /// <summary>Without a reading: the wide sheet of the first of the kinds.</summary>
    public static Draft Run(OutlineKinds outline)
    {
        var first = outline.Kinds[0];
        return new(first, first.Sheet, first.Values, [.. outline.Kinds.Select(k => (k, k.Chance))], Wanted.Of(new UnitModel(first.Sheet), new HashSet<string>()));
    }
}
