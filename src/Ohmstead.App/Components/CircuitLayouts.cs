using System.Runtime.CompilerServices;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.App.Components;

/// <summary>Layouts of circuits, each worked out once beside the screens and kept as long as its sheet.</summary>
internal static class CircuitLayouts
{
    private static readonly ConditionalWeakTable<TypeSheet, Task<CircuitLayout>> Kept = [];

    /// <summary>The layout of a sheet.</summary>
    public static Task<CircuitLayout> OfAsync(TypeSheet sheet) =>
        Kept.GetValue(sheet, s => Task.Run(() => CircuitLayout.Of(s)));
}
