using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Drawers;

/// <summary>Something that was said or done at the drawer. The words of "kind" are part of the file format.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(BinSaid), "bin")]
[JsonDerivedType(typeof(BinCounted), "counted")]
[JsonDerivedType(typeof(PartsUsed), "used")]
[JsonDerivedType(typeof(PartsOrdered), "ordered")]
[JsonDerivedType(typeof(PartsReceived), "received")]
[JsonDerivedType(typeof(KitSaid), "kit")]
[JsonDerivedType(typeof(KitTaken), "kit-taken")]
[JsonDerivedType(typeof(KitPutBack), "kit-put-back")]
[JsonDerivedType(typeof(DonorSaid), "donor")]
[JsonDerivedType(typeof(DonorGave), "donor-gave")]
[JsonDerivedType(typeof(EntryUndone), "undone")]
public abstract record DrawerFact;

/// <summary>What is so of a bin; what is null was not said, and stays as it was. The first of an id makes the bin.</summary>
public sealed record BinSaid(Guid Bin) : DrawerFact
{
    /// <summary>What is written on its front: "C1".</summary>
    public string? Tag { get; init; }

    /// <summary>What lies in it: "Roller, carbon".</summary>
    public string? Name { get; init; }

    /// <summary>The part as take-apart steps of type sheets name it: "roller"; empty for none.</summary>
    public string? Part { get; init; }

    /// <summary>Hash of its photo.</summary>
    public string? Photo { get; init; }

    /// <summary>Price of one [money].</summary>
    public decimal? Price { get; init; }

    /// <summary>Days from an order to its parts.</summary>
    public double? LeadDays { get; init; }

    /// <summary>Used a year, where the person knows; below 0 for "not known": then it is learned from what was used.</summary>
    public double? PerYear { get; init; }

    /// <summary>True when the bin is no more.</summary>
    public bool? IsGone { get; init; }
}

/// <summary>A bin was counted: so many lie in it now.</summary>
public sealed record BinCounted(Guid Bin, int Count) : DrawerFact;

/// <summary>Parts went out of the drawer and into no unit that is known here.</summary>
/// <param name="Words">What for; may be empty.</param>
public sealed record PartsUsed(Guid Bin, int Count, string Words) : DrawerFact;

/// <summary>Parts were ordered.</summary>
/// <param name="Price">Of one [money].</param>
public sealed record PartsOrdered(Guid Bin, int Count, string Supplier, decimal Price) : DrawerFact;

/// <summary>Parts came in: a batch, known by the entry's id.</summary>
/// <param name="Lot">The supplier's mark on them; may be empty.</param>
/// <param name="Date">The date on them or on the bill.</param>
public sealed record PartsReceived(Guid Bin, int Count, string Supplier, string Lot, DateOnly Date) : DrawerFact;

/// <summary>What a job of some sort takes out of the drawer, and how many such jobs are planned; no parts: there is no such kit any more.</summary>
public sealed record KitSaid(Guid Kit, string Name, ImmutableArray<BinCount> Needs, int Planned) : DrawerFact;

/// <summary>Parts were taken out for a unit and lie beside it. The repairs that fit them take them from there.</summary>
public sealed record KitTaken(Guid Unit, string Tag, ImmutableArray<BinCount> Parts) : DrawerFact
{
    /// <summary>
    /// The kit that they are: one such job less is planned from then on. Null where they were taken out without one, and in entries of
    /// older versions.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Guid? Kit { get; init; }
}

/// <summary>What was taken out for a unit and is not fitted went back into the drawer.</summary>
public sealed record KitPutBack(Guid Unit, string Tag) : DrawerFact;

/// <summary>A unit that was given up and parts are taken from; what is left in it as it is now.</summary>
/// <param name="Unit">Where it is in this workshop; null where it never came in.</param>
/// <param name="Words">What else is left in it, in words.</param>
public sealed record DonorSaid(Guid Donor, string Tag, Guid? Unit, ImmutableArray<BinCount> Left, string Words) : DrawerFact;

/// <summary>Parts came out of a donor and into their bin.</summary>
public sealed record DonorGave(Guid Donor, Guid Bin, int Count) : DrawerFact;

/// <summary>An earlier entry does not count, or counts again.</summary>
public sealed record EntryUndone(Guid Entry, bool IsUndone) : DrawerFact;

/// <summary>So many of what lies in a bin.</summary>
public sealed record BinCount(Guid Bin, int Count);
