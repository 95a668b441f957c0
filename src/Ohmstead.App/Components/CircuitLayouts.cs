using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.App.Components;

/// <summary>Layouts of circuits, each worked out once beside the screens and kept as long as its sheet.</summary>
internal static class CircuitLayouts
{
    private static readonly ConditionalWeakTable<TypeSheet, ConcurrentDictionary<string, Lazy<Task<CircuitLayout>>>> Kept =
    [];

    /// <summary>The layout of a sheet.</summary>
    /// <param name="path">Only its parts carry their names; null for all parts.</param>
    public static Task<CircuitLayout> OfAsync(TypeSheet sheet, MeasuredPath? path)
    {
        var named = path?.Parts.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        return Kept.GetOrCreateValue(sheet)
            .GetOrAdd(
                named is null ? "" : string.Join(' ', named),
                _ => new(() => Task.Run(() => CircuitLayout.Of(sheet, named)))
            )
            .Value;
    }
}
