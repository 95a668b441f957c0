using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>A way through the readings of a practice unit: what was read, in which order, and the minutes at the bench that it cost.</summary>
/// <param name="Steps">The readings, first to last.</param>
public sealed record PracticeWay(ImmutableArray<WayStep> Steps)
{
    /// <summary>Nothing read yet.</summary>
    public static PracticeWay None { get; } = new([]);

    /// <summary>At the bench, from the first to the last [min].</summary>
    public double Minutes => Steps.IsEmpty ? 0 : Steps[^1].AtMinutes;

    /// <summary>The way that a person went: each reading costs its minutes, one that was undone or taken once more too.</summary>
    public static PracticeWay Own(BenchUnit unit, TypeSheet sheet) =>
        unit
            .Journal.Select(e => e.Fact)
            .OfType<ReadingEntered>()
            .Where(r => r.Shown.Kind != ShownKind.NotTaken && sheet.FindReading(r.ReadingId) is not null)
            .Aggregate(None, (way, r) => way.With(sheet, sheet.FindReading(r.ReadingId)!, r.Shown));

    /// <summary>With one more reading: its own minutes, and those of what has to come off for it and is not off yet.</summary>
    public PracticeWay With(TypeSheet sheet, ReadingSpec spec, Shown shown)
    {
        var minutes = spec.Minutes + Gates.OpeningMinutes(sheet, [spec.Access], Steps.Select(s => s.Spec.Access));
        return new(Steps.Add(new(spec, PartNames.Reading(sheet, spec.Id), ShownText.Write(shown, spec.Quantity), Minutes + minutes)));
    }
}

/// <summary>A reading on a way.</summary>
/// <param name="Title">What was read.</param>
/// <param name="Shown">What the meter showed.</param>
/// <param name="AtMinutes">When it was done, from the start [min].</param>
public sealed record WayStep(ReadingSpec Spec, string Title, string Shown, double AtMinutes);
