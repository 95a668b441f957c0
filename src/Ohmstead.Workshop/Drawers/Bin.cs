using System.Collections.Immutable;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawers;

/// <summary>A bin as it stands.</summary>
/// <param name="Part">The part as take-apart steps name it; empty for none.</param>
/// <param name="Photo">Hash of its photo; empty for none.</param>
/// <param name="Price">Of one [money].</param>
/// <param name="PerYear">Used a year, as the person says; null where it is learned.</param>
/// <param name="Since">When the bin was made.</param>
public sealed record Bin(
    Guid Id,
    string Tag,
    string Name,
    string Part,
    string Photo,
    decimal Price,
    double LeadDays,
    double? PerYear,
    DateTimeOffset Since
)
{
    /// <summary>How many lie in it.</summary>
    public int Count { get; init; }

    /// <summary>Ordered and not here yet.</summary>
    public int OnOrder { get; init; }

    /// <summary>When the oldest order that is not here was made; null where none is.</summary>
    public DateTimeOffset? OrderedAt { get; init; }

    /// <summary>How many were ever used.</summary>
    public int Used { get; init; }

    /// <summary>Taken out and lying beside units.</summary>
    public int SetAside { get; init; }

    /// <summary>The batches that came in, oldest first.</summary>
    public ImmutableArray<DrawerBatch> Batches { get; init; } = [];

    /// <summary>When what is ordered ought to be here; null where nothing is.</summary>
    public DateTimeOffset? DueAt => OrderedAt?.AddDays(LeadDays);

    /// <summary>Tag and name: "C1 Roller, carbon".</summary>
    public string Title => Tag.Length == 0 ? Name : $"{Tag} {Name}";

    /// <summary>
    /// True for a bin that such a part lies in: by the id that take-apart steps and the shop's price list have for it, or by what its name
    /// says that it is ("cord", "roller"; a roller pin is no roller).
    /// </summary>
    public bool Holds(string part) =>
        part.Length > 0
        && (
            Part == part
            || PartNoun.IsOne(Name, part)
            || UsualShop.Parts.Any(p => p.Id == part && Name.StartsWith(p.Name, StringComparison.OrdinalIgnoreCase))
        );
}

/// <summary>Parts that came in together.</summary>
/// <param name="Id">Of the entry that says so.</param>
/// <param name="Left">Of them in the drawer or set aside.</param>
public sealed record DrawerBatch(Guid Id, Guid Bin, string Supplier, string Lot, DateOnly Date, int Received, int Left)
{
    /// <summary>"Acme, lot 41": without the date, as it stands in a unit's journal.</summary>
    public string Name =>
        Supplier.Length + Lot.Length == 0 ? ""
        : Lot.Length == 0 ? Supplier
        : Supplier.Length == 0 ? $"lot {Lot}"
        : $"{Supplier}, lot {Lot}";
}

/// <summary>What a job of some sort takes out of the drawer.</summary>
/// <param name="Planned">Such jobs that are planned: their parts are reserved.</param>
public sealed record DrawerKit(Guid Id, string Name, ImmutableArray<BinCount> Needs, int Planned)
{
    /// <summary>How many pieces it takes in all.</summary>
    public int Pieces => Needs.Sum(n => n.Count);

    /// <summary>How many pieces it takes from a bin.</summary>
    public int From(Guid bin) => Needs.Where(n => n.Bin == bin).Sum(n => n.Count);
}

/// <summary>A unit that was given up, and what is left in it.</summary>
public sealed record DrawerDonor(Guid Id, string Tag, Guid? Unit, ImmutableArray<BinCount> Left, string Words);

/// <summary>Parts that lie beside a unit.</summary>
public sealed record AsideFor(Guid Unit, string Tag, ImmutableArray<BinCount> Parts);
