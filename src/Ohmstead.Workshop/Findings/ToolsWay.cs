using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Findings;

/// <summary>The tool on a practice unit by itself: always the reading that it ranks best, until what was planted is very likely.</summary>
/// <param name="meter">What the meter shows: a reading, and how the bench stands.</param>
/// <param name="diagnose">From readings to faults.</param>
public sealed class ToolsWay(Func<string, BenchState, Shown> meter, Func<UnitReadings, DiagnosisResult> diagnose)
{
    /// <summary>What is planted counts as found from here on: "very likely".</summary>
    public const double Found = 0.75;

    /// <summary>It gives up after so many readings.</summary>
    public const int MostReadings = 20;

    /// <summary>Goes it. Cost: a diagnosis for each reading.</summary>
    /// <param name="unit">As it was taken in, with nothing read.</param>
    /// <param name="sheet">Its type sheet.</param>
    /// <param name="told">Told the way so far after each reading.</param>
    /// <returns>The way, and whether it ended with all of it found.</returns>
    public (PracticeWay Way, bool IsFound) Go(
        BenchUnit unit,
        TypeSheet sheet,
        Shop shop,
        IReadOnlyCollection<FaultMode> planted,
        Action<PracticeWay> told
    )
    {
        var (model, way) = (new UnitModel(sheet), PracticeWay.None);
        while (true)
        {
            var readings = BenchReadings.Of(unit, model, shop).Required;
            var result = diagnose(readings);
            if (!way.Steps.IsEmpty && planted.All(p => Chance(result, p) >= Found))
                return (way, true);
            if (way.Steps.Length == MostReadings || Next(sheet, readings, result) is not { } spec)
                return (way, false);
            var shown = meter(spec.Id, unit.Bench);
            way = way.With(sheet, spec, shown);
            told(way);
            var number = unit.LastNumber + 1;
            unit = UnitHistory.Fold([
                .. unit.Journal,
                new(
                    new Guid(number, 0, 0, new byte[8]),
                    unit.Id,
                    number,
                    unit.Last.At,
                    "tool",
                    new ReadingEntered(spec.Id, shown, unit.Bench)
                ),
            ]);
        }
    }

    /// <summary>The chance of a fault, with those that no reading tells from it.</summary>
    private static double Chance(DiagnosisResult result, FaultMode fault)
    {
        var alike = result.Alike.Where(g => g.Any(m => m.Name == fault.Name)).SelectMany(g => g).Append(fault).Select(m => m.Name);
        var names = alike.ToHashSet(StringComparer.Ordinal);
        return result.Faults.Where(f => names.Contains(f.Mode.Name)).Sum(f => f.Probability);
    }

    /// <summary>The best that can be read; where a check locks it, that check; null where nothing is left that is not locked for good.</summary>
    private static ReadingSpec? Next(TypeSheet sheet, UnitReadings readings, DiagnosisResult result)
    {
        bool IsTaken(string id) => readings.Readings.Any(r => r.Spec.Id == id);
        foreach (var next in NextInOrder.Of(sheet, readings, result))
        {
            if (next.BlockedBy.Length == 0 && !IsTaken(next.Spec.Id))
                return next.Spec;
            if (next.BlockedBy.FirstOrDefault(id => !IsTaken(id)) is { } check && sheet.FindReading(check) is { Needs.Length: 0 } first)
                return first;
        }
        return null;
    }
}
