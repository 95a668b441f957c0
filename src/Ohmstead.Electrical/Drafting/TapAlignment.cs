using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>
/// Moves the taps of a drafted sheet to where a unit's no-load volts put them against each other, before its faults are looked for: a
/// diagnosis knows a winding's taps by one factor, and would take what is left for faults or slips.
/// </summary>
public static class TapAlignment
{
    /// <summary>No-load volts that are farther off than this are a fault's, not a tap's: five deviations of one.</summary>
    private const double Farthest = 0.15;

    private const int Rounds = 2;

    private const double SmallStep = 0.05;

    /// <summary>
    /// The sheet with its taps and ends of sliders' runs moved, each by itself; all else, and how sure it is, stays. A sheet whose turns
    /// are known is given back as it is. A meter of high resistance reads no-load volts through a worn contact, so that they survive most
    /// faults. Cost: two solutions of each such reading for each number of the sheet.
    /// </summary>
    public static TypeSheet Of(TypeSheet sheet, UnitReadings readings)
    {
        var model = new UnitModel(sheet);
        if (!model.Parameters.Any(p => p is { Kind: ParameterKind.Turns, KindSigma: > 0 }))
            return sheet;
        var open = readings with { Readings = [.. readings.Readings.Where(r => IsNoLoad(r) && IsNear(model, r))] };
        if (open.Readings.IsEmpty)
            return sheet;
        var medians = Fit.Medians(model, [new FaultedUnit(open)], keepSpreads: true, Rounds, SmallStep);
        var moved = sheet.Elements;
        var byPath = Enumerable
            .Range(0, medians.Shapes.Length)
            .ToDictionary(k => medians.Shapes[k].Path, medians.OwnFactorOf, StringComparer.Ordinal);
        double By(string path) => byPath.GetValueOrDefault(path, 1);
        foreach (var n in medians.Shapes.Select(s => model.Parameters[s.Winding].Index).Distinct())
        {
            var w = (Winding)moved[n];
            var (taps, sliders) = (
                w.Taps.Select(t => t with { Turn = t.Turn * By($"elements.{w.Id}.{t.To}.turn") }).ToArray(),
                w.Sliders.Select(s =>
                        s with
                        {
                            FromTurn = s.FromTurn * By($"elements.{s.Id}.fromTurn"),
                            ToTurn = s.ToTurn * By($"elements.{s.Id}.toTurn"),
                        }
                    )
                    .ToArray()
            );
            // A winding reaches to its highest tap.
            var turns = taps.Select(t => t.Turn).Concat(sliders.SelectMany(s => new[] { s.FromTurn, s.ToTurn })).Append(w.Turns).Max();
            moved = moved.SetItem(n, w with { Turns = turns, Taps = [.. taps], Sliders = [.. sliders] });
        }
        return sheet with { Elements = moved };
    }

    private static bool IsNoLoad(TakenReading r) =>
        r
            is {
                Outcome: Outcome.Value,
                Spec.Quantity: Quantity.AcVolts,
                State: { Source: { IsDirect: false, HasLamp: false, SeriesOhms: 0 }, Loads.IsEmpty: true, Lifted.IsEmpty: true }
            };

    private static bool IsNear(UnitModel model, TakenReading r) =>
        Judging.CanJudge(model, r.Spec, r.State)
        && new ReadingSolver().Solve(new FaultedCircuits(model, r.Spec, r.State).Usual, model.Nominal).Value is { } usual
        && Math.Abs(r.Value - usual) <= Farthest * Math.Abs(usual);
}
