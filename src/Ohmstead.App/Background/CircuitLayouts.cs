using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.App.Background;

/// <summary>Layouts of circuits, each worked out once beside the screens and kept as long as its sheet.</summary>
internal static class CircuitLayouts
{
    private static readonly ConditionalWeakTable<TypeSheet, ConcurrentDictionary<string, Lazy<Task<CircuitLayout>>>> Kept = [];

    /// <summary>The layout of a sheet.</summary>
    /// <param name="named">Only these parts carry their names; null for all parts.</param>
    public static Task<CircuitLayout> OfAsync(TypeSheet sheet, IEnumerable<string>? named)
    {
        var only = named?.ToHashSet(StringComparer.Ordinal);
        return Kept.GetOrCreateValue(sheet)
            .GetOrAdd(
                only is null ? "" : "only " + string.Join(' ', only.Order(StringComparer.Ordinal)),
                _ => new(() => Task.Run(() => CircuitLayout.Of(sheet, only)))
            )
            .Value;
    }
}
