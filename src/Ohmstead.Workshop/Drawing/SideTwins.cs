using System.Globalization;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// Parts of a side that occur twice, as the two throttles of a twin unit do: pairs that an exchange of names would leave the
/// same. Found by refining colours: things are alike while all that they meet is alike.
/// </summary>
/// <param name="Lines">Pairs of lines.</param>
/// <param name="Nodes">Pairs of upright wires.</param>
/// <param name="Windings">Pairs of windings.</param>
internal sealed record SideTwins(
    IReadOnlyList<(int First, int Second)> Lines,
    IReadOnlyList<(int First, int Second)> Nodes,
    IReadOnlyList<(int First, int Second)> Windings
)
{
    private const int Rounds = 10;

    public static SideTwins Of(SideGraph graph)
    {
        var lines = Numbered(graph.Lines.Select(Own));
        var nodes = new int[graph.Nodes.Count];
        var windings = Numbered(graph.Windings.Select(w => Text(w.CoreIndex) + "/" + Text(w.Fixed.Count) + "/" + Text(w.Sliders.Count)));
        for (var round = 0; round < Rounds; round++)
        {
            var ports = PortColours(graph, windings);
            lines = Numbered(graph.Lines.Select((l, e) => LineColour(l, lines[e], nodes, ports[e])));
            nodes = Numbered(graph.Nodes.Select((_, v) => NodeColour(graph, v, nodes[v], lines)));
            windings = Numbered(
                graph.Windings.Select(
                    (w, n) => Text(windings[n]) + ":" + string.Join(',', w.Fixed.Concat(w.Sliders).Select(p => Text(lines[p.Line])))
                )
            );
        }
        return new(Pairs(lines), Pairs(nodes), Pairs(windings));
    }

    private static string Own(SideLine line)
    {
        var there = string.Join(' ', line.Items.Select(i => i.Element is { } e ? e.Kind + (i.IsForward ? ">" : "<") : "o"));
        var back = string.Join(' ', line.Reversed().Items.Select(i => i.Element is { } e ? e.Kind + (i.IsForward ? ">" : "<") : "o"));
        return string.CompareOrdinal(there, back) < 0 ? there : back;
    }

    private static string[] PortColours(SideGraph graph, int[] windings)
    {
        var ports = new string[graph.Lines.Count];
        Array.Fill(ports, "");
        for (var w = 0; w < windings.Length; w++)
        {
            var all = graph.Windings[w].Fixed;
            for (var n = 0; n < all.Count; n++)
                ports[all[n].Line] += Text(windings[w]) + "." + Text(n) + ";";
            foreach (var s in graph.Windings[w].Sliders)
                ports[s.Line] += Text(windings[w]) + "~" + Figure.Of(s.Turn) + "-" + Figure.Of(s.TurnTo) + ";";
        }
        return ports;
    }

    private static string LineColour(SideLine line, int own, int[] nodes, string port)
    {
        var ends = new[] { End(line.First, nodes), End(line.Last, nodes) };
        Array.Sort(ends, string.CompareOrdinal);
        return $"{Text(own)}|{ends[0]}|{ends[1]}|{port}";
    }

    private static string End(LineEnd end, int[] nodes) => end.Kind + (end.Node >= 0 ? Text(nodes[end.Node]) : "");

    private static string NodeColour(SideGraph graph, int node, int own, int[] lines)
    {
        var meets = Enumerable.Range(0, lines.Length).Where(e => graph.Lines[e].First.Node == node || graph.Lines[e].Last.Node == node);
        return Text(own) + ":" + string.Join(',', meets.Select(e => lines[e]).Order().Select(Text));
    }

    private static int[] Numbered(IEnumerable<string> colours)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        return [.. colours.Select(c => numbers.TryGetValue(c, out var n) ? n : numbers[c] = numbers.Count)];
    }

    private static List<(int First, int Second)> Pairs(int[] colours) =>
        [
            .. colours
                .Select((c, n) => (Colour: c, Index: n))
                .GroupBy(c => c.Colour)
                .Where(g => g.Count() == 2)
                .Select(g => (g.First().Index, g.Last().Index)),
        ];

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
