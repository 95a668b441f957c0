using System.Runtime.CompilerServices;
using Ohmstead.App.Queue;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Background;

/// <summary>Layouts of circuits, each worked out once beside the screens.</summary>
internal static class CircuitLayouts
{
    /// <summary>Whole circuits and the paths of readings that are looked at in a sitting.</summary>
    private const int MostKept = 64;

    private static readonly BoundedCache<(TypeSheet Sheet, string Named), Task<CircuitLayout>> Kept = new(
        "Circuits as drawn",
        MostKept,
        new SameObject()
    );

    /// <summary>How many are kept, and how often one was there.</summary>
    public static CacheCount Counted => Kept.Counted;

    /// <summary>The layout of a sheet.</summary>
    /// <param name="named">Only these parts carry their names; null for all parts.</param>
    public static Task<CircuitLayout> OfAsync(WorkQueue work, TypeSheet sheet, IEnumerable<string>? named)
    {
        var only = named?.ToHashSet(StringComparer.Ordinal);
        return Kept.GetOrAdd(
            (sheet, only is null ? "" : "only " + string.Join(' ', only.Order(StringComparer.Ordinal))),
            _ => work.RunAsync("A circuit", () => CircuitLayout.Of(sheet, only))
        );
    }

    /// <summary>A sheet is the same only as the same object: two with the same content are rare, and comparing them is slow.</summary>
    private sealed class SameObject : IEqualityComparer<(TypeSheet Sheet, string Named)>
    {
        public bool Equals((TypeSheet Sheet, string Named) x, (TypeSheet Sheet, string Named) y) =>
            ReferenceEquals(x.Sheet, y.Sheet) && x.Named == y.Named;

        public int GetHashCode((TypeSheet Sheet, string Named) key) =>
            HashCode.Combine(RuntimeHelpers.GetHashCode(key.Sheet), key.Named.GetHashCode(StringComparison.Ordinal));
    }
}
