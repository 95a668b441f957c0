using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Merging;

namespace Ohmstead.Storage.Merging;

/// <summary>How far a merge is.</summary>
/// <param name="Done">Units that are done.</param>
/// <param name="All">Units of the other bench.</param>
public sealed record MergeProgress(int Done, int All);

/// <summary>What came in from another bench, or why nothing did.</summary>
public sealed record MergeOutcome
{
    /// <summary>Everything that keeps it from being merged; when there is any, nothing was taken.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>The mark of the other bench; empty where it does not say.</summary>
    public string Bench { get; init; } = "";

    /// <summary>Where the backup is that was made before; empty where there is none.</summary>
    public string Backup { get; init; } = "";

    /// <summary>How far it came.</summary>
    public MergeProgress Progress { get; init; } = new(0, 0);

    /// <summary>True where it was stopped: what came in stays, and merging again goes on from there.</summary>
    public bool IsStopped { get; init; }

    /// <summary>Units that were not here before.</summary>
    public int NewUnits { get; init; }

    /// <summary>Units that were here and have new entries.</summary>
    public int GrownUnits { get; init; }

    /// <summary>Entries that were not here before.</summary>
    public int NewEntries { get; init; }

    /// <summary>Photos and recordings that were not here before.</summary>
    public int NewPhotos { get; init; }

    /// <summary>Type sheets, entries of the drawer and the like that were not here before.</summary>
    public int NewDocuments { get; init; }

    /// <summary>True where the shop's settings of the other bench differ: they lie beside those here.</summary>
    public bool HasOtherShop { get; init; }

    /// <summary>Photos that its entries speak of and that are in neither workshop.</summary>
    public int MissingPhotos { get; init; }

    /// <summary>Entries that say something else than the same entries here: a file was changed by hand.</summary>
    public int AlteredEntries { get; init; }

    /// <summary>Clocks that were wrong, with the unit on which it is seen first; each bench once.</summary>
    public IReadOnlyList<(Guid UnitId, WrongClock Clock)> WrongClocks { get; init; } = [];

    /// <summary>Tags of units that keep an older version of their type: the other bench named it by a number, which is another text here.</summary>
    public IReadOnlyList<string> TypesToLookAt { get; init; } = [];

    /// <summary>Units whose journals grew.</summary>
    public IReadOnlyList<Guid> Changed { get; init; } = [];
}
