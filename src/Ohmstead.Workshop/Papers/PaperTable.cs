using System.Collections.Immutable;
using Ohmstead.Workshop.Job;

namespace Ohmstead.Workshop.Papers;

/// <summary>Every paper of a unit: a new one is a row here, and all that must hold for papers is asked of it.</summary>
public static class PaperTable
{
    /// <summary>The papers.</summary>
    public static ImmutableArray<PaperRow> All { get; } =
    [
        new(ServiceRecord.Id, matter => [ServiceRecord.Make(matter)]),
        new(OwnerPage.Id, matter => OwnerPage.Choices.Select(most => OwnerPage.Make(matter, most))),
        new(BenchSheet.Id, matter => [BenchSheet.Make(matter, [])]),
        new(Estimate.Id, matter => [Estimate.Make(matter)]),
        new(WiringSheet.Id, matter => [WiringSheet.Make(matter)]),
    ];
}

/// <summary>A paper.</summary>
/// <param name="Id">Its name in addresses and in the journal.</param>
/// <param name="Lengths">The longest first. Where there are several, the first that one page holds is the paper.</param>
public sealed record PaperRow(string Id, Func<JudgedUnit, IEnumerable<Paper>> Lengths);
