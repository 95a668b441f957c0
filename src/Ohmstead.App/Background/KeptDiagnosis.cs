using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Findings;

namespace Ohmstead.App.Background;

/// <summary>What is kept of the findings of one unit. Only the task whose turn it is writes it.</summary>
internal sealed class KeptDiagnosis
{
    public volatile DiagnosisState State = DiagnosisState.Nothing;

    public JudgedKey? Key { get; set; }

    public UnitReadings? Readings { get; set; }

    public ReadingLibrary? Library { get; set; }

    public JudgedKey? LibraryKey { get; set; }
}
