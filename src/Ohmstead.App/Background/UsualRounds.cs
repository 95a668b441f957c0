using System.Collections.Immutable;
using Ohmstead.App.Queue;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Background;

/// <summary>The usual round of a kind of unit, worked out once for every version of its sheet.</summary>
internal static class UsualRounds
{
    /// <summary>Sheets whose round is kept: more than a workshop has on its benches at a time.</summary>
    private const int MostKept = 64;

    private static readonly BoundedCache<TypeSheet, Task<ImmutableArray<ReadingSpec>>> Kept = new(
        "Quick lists of types",
        MostKept,
        ReferenceEqualityComparer.Instance
    );

    /// <summary>How many are kept, and how often one was there.</summary>
    public static CacheCount Counted => Kept.Counted;

    /// <summary>The round of a sheet.</summary>
    public static Task<ImmutableArray<ReadingSpec>> OfAsync(WorkQueue work, TypeSheet sheet) =>
        Kept.GetOrAdd(sheet, s => work.RunAsync("A quick list", () => UsualRound.Choose(new UnitModel(s), Meter.Usual)));
}
