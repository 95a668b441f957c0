using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>
/// How much work the lists for a whole sheet are, counted before any of it is done, and how much is taken on. A unit of the trade has
/// some tens of parts and stays far below; a sheet of hundreds of parts would not end in the patience of a person.
/// </summary>
public static class PlanningBound
{
    /// <summary>Solutions times elements, for the pairs of nets and once more for the gangs: some 4 s each on a slow machine.</summary>
    public const long MostContinuity = 2_000_000;

    /// <summary>Mistakes times elements times what is done for each (<see cref="Setup"/> and the readings): some 15 s on a slow machine.</summary>
    public const long MostRewire = 25_000_000;

    /// <summary>Building a circuit costs as much as so many of its readings (measured).</summary>
    private const int Setup = 10;

    /// <summary>Work of the ohmmeter checks: every two nets are measured in both directions.</summary>
    public static long OfContinuity(TypeSheet sheet)
    {
        long nets = Nets(sheet);
        return nets * (nets - 1) * sheet.Elements.Length;
    }

    /// <summary>Work of the check of a rewire.</summary>
    public static long OfRewire(TypeSheet sheet) => MostMistakes(sheet) * sheet.Elements.Length * (Setup + sheet.Readings.Length);

    /// <summary>Why the ohmmeter checks of a sheet are not planned, as sentences; empty when they are.</summary>
    public static string RefuseContinuity(TypeSheet sheet) =>
        OfContinuity(sheet) <= MostContinuity
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture,
                $"this type sheet is too large for a list of continuity checks: {Nets(sheet)} points to tell apart in {sheet.Elements.Length} parts. Put circuits that do not touch on sheets of their own."
            );

    /// <summary>Why the wiring of a sheet is not checked, as sentences; empty when it is.</summary>
    public static string RefuseRewire(TypeSheet sheet) =>
        OfRewire(sheet) <= MostRewire
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture,
                $"this type sheet is too large for the wiring check: up to {MostMistakes(sheet)} possible mistakes in {sheet.Elements.Length} parts. Leave out wires that were not moved, and keep groups of near terminals small."
            );

    /// <summary>At most so many mistakes: exchanges that leave the same circuit are counted too, so that nothing has to be built.</summary>
    private static long MostMistakes(TypeSheet sheet)
    {
        long wires = sheet.Elements.Count(e => e.Kind == ElementKind.Wire);
        var at = sheet.Elements.Where(e => e.Kind == ElementKind.Wire).SelectMany(w => (string[])[w.From, w.To]).ToList();
        var moves = sheet.Near.Sum(near => at.Count(near.Contains) * (near.Length - 1L));
        var bridges = sheet.Near.Sum(near => near.Length * (near.Length - 1L) / 2);
        return (2 * wires * (wires - 1)) + moves + bridges + wires + (2L * sheet.Elements.Length);
    }

    private static int Nets(TypeSheet sheet) =>
        new OhmmeterBench(sheet, ImmutableDictionary<string, ControlPosition>.Empty, Meter.Usual).Nets.Length;
}
