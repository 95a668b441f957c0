using System.Collections.Immutable;

namespace Ohmstead.Workshop.Drawers;

/// <summary>What lies beside units, while the entries of the drawer are gone through.</summary>
internal sealed class AsideFold
{
    private readonly Dictionary<Guid, Beside> units = [];
    private readonly Dictionary<Guid, int> byBin = [];

    /// <summary>How many of a bin lie beside units.</summary>
    public int Of(Guid bin) => byBin.GetValueOrDefault(bin);

    /// <summary>As it stands.</summary>
    public ImmutableArray<AsideFor> Answer =>
        [
            .. units
                .Select(u => new AsideFor(
                    u.Key,
                    u.Value.Tag,
                    [.. u.Value.Parts.Where(p => p.Value > 0).Select(p => new BinCount(p.Key, p.Value))]
                ))
                .Where(a => !a.Parts.IsEmpty)
                .OrderBy(a => a.Tag, StringComparer.Ordinal),
        ];

    /// <summary>Parts were taken out for a unit.</summary>
    /// <param name="wasPlanned">True where the kit was one of those planned: put back whole, it is planned again.</param>
    public void Put(KitTaken taken, bool wasPlanned)
    {
        if (!units.TryGetValue(taken.Unit, out var own))
            units[taken.Unit] = own = new(taken.Tag, [], []);
        foreach (var part in taken.Parts)
            Add(own, part.Bin, part.Count);
        if (wasPlanned)
            own.Planned.Add(taken);
    }

    /// <summary>A part went into a unit: what lies beside it goes first.</summary>
    /// <returns>How many of it lay there.</returns>
    public int Fit(FittedPart part)
    {
        if (!units.TryGetValue(part.Unit, out var own))
            return 0;
        var beside = Math.Min(own.Parts.GetValueOrDefault(part.From.Bin), part.From.Count);
        Add(own, part.From.Bin, -beside);
        return beside;
    }

    /// <summary>What lies beside a unit goes back.</summary>
    /// <returns>So many by bin, and the kits of which nothing was fitted.</returns>
    public (IReadOnlyDictionary<Guid, int> Parts, IReadOnlyList<Guid> Whole) PutBack(Guid unit)
    {
        if (!units.Remove(unit, out var own))
            return (ImmutableDictionary<Guid, int>.Empty, []);
        foreach (var (bin, count) in own.Parts)
            byBin[bin] -= count;
        var (left, whole) = (own.Parts.ToDictionary(), new List<Guid>());
        foreach (var taken in own.Planned.Where(t => t.Parts.All(p => left.GetValueOrDefault(p.Bin) >= p.Count)))
        {
            whole.Add(taken.Kit!.Value);
            foreach (var part in taken.Parts)
                left[part.Bin] -= part.Count;
        }
        return (own.Parts, whole);
    }

    private void Add(Beside own, Guid bin, int count)
    {
        own.Parts[bin] = own.Parts.GetValueOrDefault(bin) + count;
        byBin[bin] = byBin.GetValueOrDefault(bin) + count;
    }

    private sealed record Beside(string Tag, Dictionary<Guid, int> Parts, List<KitTaken> Planned);
}
