using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>
/// What a band costs: the nominal unit, one more for each narrow part and two for each wide one, and eight drawn units at either end where
/// the quadratic law holds already. A size that is free is cut into twelve, three units each; only in three of the twelve all parts are moved.
/// </summary>
public class BandCostTests
{
    private const int AtBothEnds = 2 * 8;

    private static long Solved(string[] free, params (string Id, double Ohms, double Sigma)[] wires)
    {
        var draft = new SheetDraft();
        for (var n = 0; n < wires.Length; n++)
            draft.Element(
                "wire",
                wires[n].Id,
                Place(n),
                Place(n + 1),
                new { ohms = wires[n].Ohms, spread = new { ohms = wires[n].Sigma } }
            );
        var unit = draft.Reading("row", "ohms", [Place(0), Place(wires.Length)]).Unit();
        var spec = unit.Model.Sheet.Readings[0];
        var set = new ReadingSet(unit.Model, unit.Catalogue, [(spec, spec.State, new MeterError(5, 1e-3, 0, 0))]);
        var predictor = new Predictor(set);
        ImmutableArray<AssumedFault> faults = [.. free.Select(f => new AssumedFault(unit.Catalogue.Find(f)!, null))];
        new BandFinder(set, predictor).Of(0, faults, wires.Sum(w => w.Ohms));
        return predictor.Solved;
    }

    [Fact]
    public void A_part_is_moved_once_where_it_is_narrow_and_twice_where_it_is_wide()
    {
        Assert.Equal(1 + 1 + AtBothEnds, Solved([], ("r", 100, 0.15)));
        Assert.Equal(1 + 2 + AtBothEnds, Solved([], ("r", 100, 0.16)));
        Assert.Equal(1 + 2 + 1 + AtBothEnds, Solved([], ("r", 100, 0.3), ("s", 1, 0.1)));
    }

    /// <remarks>Two wires of one part in a hundred and of one in ten thousand beside a wide one: shares of the variance of 10⁻⁴ and less.</remarks>
    [Fact]
    public void Of_a_free_size_only_three_cells_move_what_hardly_matters()
    {
        var (wide, less) = (("r", 10.0, 0.5), ("s", 0.01, 0.1));
        var cells = 12 * 3;
        // The faulty wire's own ohms are a part too, and count once in three cells: its fault sets them.
        Assert.Equal(cells + (3 * (1 + 2 + 1)) + (9 * 2) + AtBothEnds, Solved(["w:resistive"], ("w", 1, 0.1), wide, less));
    }

    private static string Place(int n) => FormattableString.Invariant($"p{n}");
}
