using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Fitting;

/// <summary>A tap, or an end of a slider's run, of a drafted sheet: its turn is in doubt by itself, beside that of its whole winding.</summary>
/// <param name="Winding">The parameter that is the turns of its winding.</param>
/// <param name="Turn">Where it is.</param>
/// <param name="Doubt">Standard deviation of its logarithm, that of the winding left out.</param>
/// <param name="Moved">The same unit with this turn at <see cref="Step"/> of where it is.</param>
internal sealed record TurnShape(string Path, int Winding, double Turn, double Doubt, UnitModel Moved)
{
    /// <summary>Down, so that no tap leaves its winding.</summary>
    public const double Step = 0.98;

    /// <summary>
    /// Those of a sheet; none where no doubt about its turns is left. A drafted sheet puts the doubt of the taps on the winding's turns,
    /// where it is half of the variance.
    /// </summary>
    public static ImmutableArray<TurnShape> Of(UnitModel model)
    {
        var shapes = ImmutableArray.CreateBuilder<TurnShape>();
        for (var p = 0; p < model.Parameters.Length; p++)
        {
            if (model.Parameters[p] is not { Kind: ParameterKind.Turns, KindSigma: > 0 } parameter)
                continue;
            var (n, winding) = (parameter.Index, (Winding)model.Sheet.Elements[parameter.Index]);
            var doubt = parameter.KindSigma / Math.Sqrt(2);
            void Add(string path, double turn, Winding moved)
            {
                if (turn > 0)
                    shapes.Add(
                        new(path, p, turn, doubt, new UnitModel(model.Sheet with { Elements = model.Sheet.Elements.SetItem(n, moved) }))
                    );
            }
            foreach (var (t, k) in winding.Taps.Select((t, k) => (t, k)))
                Add(
                    $"elements.{winding.Id}.{t.To}.turn",
                    t.Turn,
                    winding with
                    {
                        Taps = winding.Taps.SetItem(k, t with { Turn = t.Turn * Step }),
                    }
                );
            foreach (var (s, k) in winding.Sliders.Select((s, k) => (s, k)))
            {
                Add(
                    $"elements.{s.Id}.fromTurn",
                    s.FromTurn,
                    winding with
                    {
                        Sliders = winding.Sliders.SetItem(k, s with { FromTurn = s.FromTurn * Step }),
                    }
                );
                Add(
                    $"elements.{s.Id}.toTurn",
                    s.ToTurn,
                    winding with
                    {
                        Sliders = winding.Sliders.SetItem(k, s with { ToTurn = s.ToTurn * Step }),
                    }
                );
            }
        }
        return shapes.ToImmutable();
    }
}
