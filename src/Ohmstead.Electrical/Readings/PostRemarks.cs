using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// Posts whose volts no train wants, or that fall by more than half under the sheet's own load: mostly turns or ohms of a winding
/// that are ten times off.
/// </summary>
internal static class PostRemarks
{
    /// <summary>What a post of a toy-train unit gives with nothing connected [V] (common practice, no source).</summary>
    internal const double Least = 0.5,
        Most = 60;

    /// <summary>Of a post behind an open contact, which is dead on purpose, less than this share is left under load.</summary>
    private const double OpenContact = 1e-3;

    public static IEnumerable<Problem> Of(UnitModel model)
    {
        var sheet = model.Sheet;
        var idle = sheet
            .Readings.Select((r, n) => (Spec: r, n))
            .Where(r => IsOfAPost(sheet, r.Spec))
            .Select(r => (r.Spec, r.n, Volts: Volts(model, r.Spec, r.Spec.State with { Loads = [] })))
            .ToList();
        // A post is dead in some positions, and that is in order: its highest volts count.
        foreach (
            var post in idle.GroupBy(
                r => string.Join(' ', new[] { r.Spec.From, r.Spec.To }.Order(StringComparer.Ordinal)),
                StringComparer.Ordinal
            )
        )
            if (post.MaxBy(r => r.Volts) is var best && best.Volts is < Least or > Most)
                yield return new Problem(
                    string.Create(CultureInfo.InvariantCulture, $"$.readings[{best.n}]"),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"would show {best.Volts:G3} V with nothing connected, and a post gives {Least:G3} to {Most:G3} V"
                    ),
                    "turns ten times off?"
                );
        foreach (var r in idle.Where(r => r.Volts > Least && !r.Spec.State.Loads.IsEmpty))
            if (Volts(model, r.Spec, r.Spec.State) is var loaded && loaded < r.Volts / 2 && loaded > r.Volts * OpenContact)
                yield return new Problem(
                    string.Create(CultureInfo.InvariantCulture, $"$.readings[{r.n}]"),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"drops from {r.Volts:G3} V to {loaded:G3} V with its own load, by more than half"
                    ),
                    "ohms or turns of a winding ten times off, or a wrong load?"
                );
    }

    /// <summary>AC volts of the mains between two terminals of the low side.</summary>
    internal static bool IsOfAPost(TypeSheet sheet, ReadingSpec r) =>
        r.Quantity == Quantity.AcVolts
        && r.State.Source is { IsDirect: false, HasLamp: false, SeriesOhms: 0 } s
        && Math.Abs(s.Volts - sheet.SupplyVolts) < 1e-9 * s.Volts
        && new[] { r.From, r.To }.Except([s.From, s.To]).Count() == 2;

    /// <summary>AC volts that a nominal sound unit shows there; NaN, which no bound is held against, while a rectifier conducts or nothing is solved.</summary>
    internal static double Volts(UnitModel model, ReadingSpec spec, ReadingState state)
    {
        var solved = new ReadingSolver().Solve(new FaultedCircuits(model, spec, state).Usual, model.Nominal);
        return solved.IsPeriodic ? double.NaN : solved.Value ?? double.NaN;
    }
}
