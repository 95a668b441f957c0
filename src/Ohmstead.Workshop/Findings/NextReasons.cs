using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>Why a reading is proposed (<see cref="NextReasoning"/>), in sentences.</summary>
/// <param name="model">The unit as it is judged.</param>
/// <param name="taken">What was read on it.</param>
/// <param name="result">What the diagnosis makes of that.</param>
public sealed class NextReasons(UnitModel model, UnitReadings taken, DiagnosisResult result)
{
    private readonly NextReasoning reasoning = new(model, taken, result);

    /// <summary>The reasons for one proposal.</summary>
    public IEnumerable<string> Of(NextReading next)
    {
        var reason = reasoning.Of(next);
        var usual = reason.Groups[0].Expected;
        if (reason.Decides)
            yield return "about "
                + string.Join("; ", reason.Groups.Select(g => $"{ValueText.Of(g.Expected.Value, usual.Quantity)} if {Say(g.Beyond)}"));
        else if (reason.Suspects.Length > 0)
            yield return $"{ValueText.Band(usual.Low, usual.High, usual.Quantity)} if {Best()}. Otherwise it may point to {string.Join("; ", reason.Suspects.Select(Say))}";
        if (reason.Waiting > 0)
            yield return $"{Counted.Of(reason.Waiting, "other reading")} {(reason.Waiting == 1 ? "waits" : "wait")} for it";
    }

    // What is already thought to be wrong is named: "nothing else" would hide it.
    private string Best() =>
        result.Hypotheses.FirstOrDefault() is { Faults.IsEmpty: false } best
            ? $"nothing more is wrong than {Sentences.List(best.Faults.Select(Say))}"
            : "nothing is wrong";

    private string Say(FaultMode mode) => PartNames.Fault(model.Sheet, mode);

    private string Say(ImmutableArray<ImmutableArray<FaultMode>> sets) =>
        string.Join(
            " or ",
            sets.Select(s => s.IsEmpty ? "nothing more is wrong" : string.Join(" + ", s.Select(Say))).Distinct(StringComparer.Ordinal)
        );
}
