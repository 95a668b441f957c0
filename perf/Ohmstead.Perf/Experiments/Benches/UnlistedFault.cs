using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Benches;

/// <summary>A fault that no catalogue lists.</summary>
/// <param name="Name">What it is, for the table of one unit.</param>
/// <param name="Element">The part that it sits in; that part has no listed fault then but <paramref name="Faults"/>.</param>
/// <param name="Sheet">The circuit with it.</param>
/// <param name="Faults">What of it is in the catalogue by name: two modes of one part, a size beyond the range.</param>
internal sealed record UnlistedFault(string Name, string Element, TypeSheet Sheet, ImmutableArray<Fault> Faults)
{
    /// <summary>Turns are shorted within a winding: a fault of it that is listed, or a doubt, tells where to look.</summary>
    public bool IsShort { get; init; }

    /// <summary>The core takes more, and no part of the catalogue can be the cause.</summary>
    public bool IsLooseCore { get; init; }
}
