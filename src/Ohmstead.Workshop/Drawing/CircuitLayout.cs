using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// Where everything in the drawing of a circuit stands: mains on the left, the core in the middle, posts on the right. It
/// depends on the circuit alone, so the picture keeps still while readings are taken; what changes is laid over it
/// (<see cref="CircuitDrawing"/>).
/// </summary>
public sealed class CircuitLayout
{
    private CircuitLayout(TypeSheet sheet, CircuitSides sides, PlacedSide mains, PlacedSide posts, CorePlacement cores, DrawnNames names)
    {
        (Sheet, Sides, Mains, Posts, Cores, Names) = (sheet, sides, mains, posts, cores, names);
    }

    /// <summary>The sheet, or the sheet of one unit with its changes.</summary>
    public TypeSheet Sheet { get; }

    internal CircuitSides Sides { get; }

    internal PlacedSide Mains { get; }

    internal PlacedSide Posts { get; }

    internal CorePlacement Cores { get; }

    internal DrawnNames Names { get; }

    /// <summary>
    /// Lays out the circuit of a sheet. The same sheet gives the same layout. Time grows with the square of the number of
    /// elements for a step of the search, the number of steps falls with it: some tens of milliseconds for 60 elements.
    /// </summary>
    /// <param name="named">
    /// Ids of the parts that carry their name; null for all. With few names the drawing is narrow enough to stand beside something.
    /// </param>
    public static CircuitLayout Of(TypeSheet sheet, IReadOnlySet<string>? named = null)
    {
        var sides = new CircuitSides(sheet);
        var names = new DrawnNames(sheet, named);
        var mains = Lay(sheet, sides, names, isMains: true);
        var posts = Lay(sheet, sides, names, isMains: false);
        (mains, posts) = SideAlignment.Align(mains, posts, sheet.Cores.Length + 1);
        return new(sheet, sides, mains, posts, CorePlacement.Of(sheet, sides, mains, posts), names);
    }

    private static PlacedSide Lay(TypeSheet sheet, CircuitSides sides, DrawnNames names, bool isMains)
    {
        var elements = isMains ? sides.Mains : sides.Posts;
        var windings = elements.OfType<Winding>().ToList();
        var ends = sides
            .Bridges.SelectMany(b => new[] { (End: b.From, Other: b.To), (End: b.To, Other: b.From) })
            .Where(b => b.End != sides.Iron && sides.IsMains(b.End) == isMains)
            .ToList();
        var toCore = ends.Select(b => b.End).Where(t => !windings.Any(w => w.From == t || w.To == t)).ToList();
        var graph = SideBuilder.Build(elements, sides.Outer, toCore, sheet.Cores, names);
        var twins = SideTwins.Of(graph);
        var cost = new SideCost(
            graph,
            twins,
            EndsOf(graph, ends.Where(b => b.Other == sides.Iron).Select(b => b.End)),
            EndsOf(graph, ends.Where(b => b.Other != sides.Iron).Select(b => b.End))
        );
        return SidePlacement.Of(SideSearch.Run(graph, twins, cost), names);
    }

    private static HashSet<(int Winding, bool IsFrom)> EndsOf(SideGraph graph, IEnumerable<string> terminals)
    {
        var wanted = terminals.ToHashSet(StringComparer.Ordinal);
        var ends = new HashSet<(int Winding, bool IsFrom)>();
        for (var w = 0; w < graph.Windings.Count; w++)
        {
            if (wanted.Contains(graph.Windings[w].Winding.From))
                ends.Add((w, true));
            if (wanted.Contains(graph.Windings[w].Winding.To))
                ends.Add((w, false));
        }
        return ends;
    }
}
