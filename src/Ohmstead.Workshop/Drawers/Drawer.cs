using System.Collections.Immutable;

namespace Ohmstead.Workshop.Drawers;

/// <summary>
/// The drawer as its entries and the journals of the units tell it. To ask whether a part is at hand: <see cref="For"/> with the
/// part's id as a take-apart step or the shop's price list has it ("roller", "cord-18-2"), or a word of the trade ("cord"); what it
/// answers says itself in words ("2 in bin C1", "on order, due Dec 8", "to order").
/// </summary>
/// <param name="Bins">Those that are there, by their tags.</param>
/// <param name="Entries">Every entry, first to last, undone ones too.</param>
/// <param name="Undone">Entries that do not count.</param>
/// <param name="Fitted">The parts of the drawer in units.</param>
public sealed record Drawer(
    ImmutableArray<Bin> Bins,
    ImmutableArray<DrawerKit> Kits,
    ImmutableArray<DrawerDonor> Donors,
    ImmutableArray<AsideFor> Aside,
    ImmutableArray<DrawerEntry> Entries,
    ImmutableHashSet<Guid> Undone,
    ImmutableArray<FittedPart> Fitted
)
{
    private readonly Dictionary<Guid, Bin> byId = Bins.ToDictionary(b => b.Id);
    private readonly ILookup<Guid, FittedPart> byBin = Fitted.Reverse().ToLookup(f => f.From.Bin);

    /// <summary>Bins that are no more: what came out of them is still in units.</summary>
    public ImmutableArray<Bin> Removed { get; init; } = [];

    /// <summary>Of entries in any order and of what was fitted into units.</summary>
    public static Drawer Of(IEnumerable<DrawerEntry> entries, IEnumerable<FittedPart> fitted) =>
        new DrawerFold([.. entries], [.. fitted]).Answer();

    /// <summary>The bin of an id; null when it is gone or never was.</summary>
    public Bin? Find(Guid bin) => byId.GetValueOrDefault(bin);

    /// <summary>True when by the count so many lie in a bin.</summary>
    public bool Has(BinCount need) => Find(need.Bin) is { } bin && bin.Count >= need.Count;

    /// <summary>The bins that such a part lies in, those with any in them first.</summary>
    public ImmutableArray<Bin> BinsOf(string part) => [.. Bins.Where(b => b.Holds(part)).OrderByDescending(b => b.Count > 0)];

    /// <summary>Whether so many of a part are at hand, for a unit that may have some set aside.</summary>
    /// <param name="spoken">Pieces of each bin that are wanted for something else on that unit; null for none.</param>
    public AtHand For(string part, int count = 1, Guid? unit = null, IReadOnlyDictionary<Guid, int>? spoken = null)
    {
        var bins = BinsOf(part);
        int Wanted(Bin bin) => count + (spoken?.GetValueOrDefault(bin.Id) ?? 0);
        var aside = Aside.Where(a => a.Unit == unit).SelectMany(a => a.Parts).ToDictionary(p => p.Bin, p => p.Count);
        var bin =
            bins.FirstOrDefault(b => b.Count + aside.GetValueOrDefault(b.Id) >= Wanted(b))
            ?? bins.FirstOrDefault(b => b.OnOrder > 0)
            ?? bins.FirstOrDefault();
        var donor = bin is null ? null : Donors.FirstOrDefault(d => d.Left.Any(l => l.Bin == bin.Id && l.Count >= count));
        return bin is null
            ? new(null, 0, count, donor)
            : new(bin, bin.Count + aside.GetValueOrDefault(bin.Id), Wanted(bin), donor)
            {
                Aside = aside.GetValueOrDefault(bin.Id),
                Batch = bin.Batches.FirstOrDefault(b => b.Left > 0),
            };
    }

    /// <summary>Where parts of a bin went, last first.</summary>
    public IEnumerable<FittedPart> WhereUsed(Guid bin) => byBin[bin];
}

/// <summary>Whether a part is at hand.</summary>
/// <param name="Bin">The bin it lies in, or would; null where no bin is for it.</param>
/// <param name="Count">How many of it are there for this unit.</param>
/// <param name="Wanted">How many are wanted.</param>
/// <param name="Donor">A donor that has so many; null for none.</param>
public sealed record AtHand(Bin? Bin, int Count, int Wanted, DrawerDonor? Donor)
{
    /// <summary>How many of them lie beside the unit already.</summary>
    public int Aside { get; init; }

    /// <summary>The batch that goes first; null where none is known.</summary>
    public DrawerBatch? Batch { get; init; }

    /// <summary>True when enough are there.</summary>
    public bool IsThere => Count >= Wanted;

    /// <summary>In words: "3 in bin C1, Acme, lot 41", "beside this unit", "on order, due Dec 8", "to order", "to order, or from donor 0388", "no bin for it".</summary>
    public string Words =>
        Bin is not { } bin ? "no bin for it"
        : Aside >= Wanted ? "beside this unit"
        : IsThere
            ? FormattableString.Invariant(
                $"{Count} in bin {(bin.Tag.Length > 0 ? bin.Tag : bin.Name)}{(Batch is { Name.Length: > 0 } b ? $", {b.Name}" : "")}"
            )
        : bin.DueAt is { } due ? FormattableString.Invariant($"on order, due {due:MMM d}")
        : Donor is { } donor ? $"to order, or from donor {donor.Tag}"
        : "to order";
}
