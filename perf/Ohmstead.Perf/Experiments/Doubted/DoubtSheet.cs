using System.Collections.Immutable;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>A sheet that the diagnosis is tried on.</summary>
/// <param name="File">From the root of the repository.</param>
/// <param name="Units">Units of a full run for each condition.</param>
/// <param name="IsWide">Its deviations are those of a sheet made from a plate: what lies within them is no reason for a doubt.</param>
internal sealed record DoubtSheet(string File, int Units, bool IsWide)
{
    /// <summary>Its name on the command line.</summary>
    public string Name => Path.GetFileName(File).Replace(".sheet.json", "", StringComparison.Ordinal);

    /// <summary>All sheets.</summary>
    public static ImmutableArray<DoubtSheet> All { get; } =
    [
        new("tests/Reference/sample/twin-160.sheet.json", 48, false),
        new("demo/solo-110.sheet.json", 48, false),
        new("demo/step-230.sheet.json", 8, false),
        new("perf/Ohmstead.Perf/Experiments/Sheets/plain-45.sheet.json", 24, true),
        new("perf/Ohmstead.Perf/Experiments/Sheets/pair-230.sheet.json", 24, true),
    ];
}
