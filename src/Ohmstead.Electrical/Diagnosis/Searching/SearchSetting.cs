using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>What a search is made with: what was read, the classes of faults, who does the work, and how widely.</summary>
/// <param name="Rows">What is known of the readings taken, one by one.</param>
/// <param name="Guard">Ends it at once.</param>
internal sealed record SearchSetting(
    Evidence Evidence,
    FaultClass[] Classes,
    ReadingRow[] Rows,
    Workers Workers,
    DiagnosisOptions Options,
    Guard Guard
)
{
    /// <summary>Shown the search at fixed amounts of its work; null where nobody looks.</summary>
    public Action<Search>? Watch { get; init; }
}
