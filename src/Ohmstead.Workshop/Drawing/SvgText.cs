using System.Text;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// Writes a drawing as SVG text. Roles become class names (<c>d-wire</c>, <c>d-suspect-high</c>, …), groups carry
/// <c>data-element</c>, <c>data-terminal</c>, <c>data-net</c> or <c>data-core</c> and a title. Colours are CSS variables of the page, with a
/// plain fallback each.
/// </summary>
public static class SvgText
{
    /// <summary>How the roles look; a page may replace it.</summary>
    public const string Style = """
        .drawing{--w:var(--ink,#23262b);--s:var(--soft,#5b5f66);--p:var(--sheet,#fffdf8);--c:var(--copper,#9a4a1c);--h:var(--rule,#8a8374);font-family:"Bench","Atkinson Hyperlegible Next","Atkinson Hyperlegible",system-ui,sans-serif;font-variant-numeric:tabular-nums}
        .drawing *{fill:none;stroke:var(--w);stroke-width:2.2;stroke-linecap:round;stroke-linejoin:round}
        .drawing text{stroke:none;fill:var(--w)}
        .drawing .d-wire{stroke-width:2.2}
        .drawing .d-symbol{stroke-width:2.4}
        .drawing polygon.d-symbol{fill:var(--w)}
        .drawing .d-solid{fill:var(--w);stroke:none}
        .drawing .d-terminal{fill:var(--p);stroke-width:2.2}
        .drawing .d-core{stroke-width:3;stroke:var(--s)}
        .drawing .d-label{font-weight:700}
        .drawing text.d-small{fill:var(--s);font-weight:400}
        .drawing text.d-value{font-weight:700;fill:var(--c)}
        .drawing .d-probe-red{fill:var(--lead-red,#a3261d);stroke:var(--lead-edge,#fffdf8);stroke-width:2}
        .drawing .d-probe-black{fill:var(--lead-black,#23262b);stroke:var(--lead-edge,#fffdf8);stroke-width:2}
        .drawing text.d-probe-text{fill:#fffdf8;font-weight:700}
        .drawing .d-suspect-low{stroke:var(--c);stroke-width:2}
        .drawing .d-suspect-medium{stroke:var(--c);stroke-width:1.6}
        .drawing rect.d-suspect-medium{stroke-width:2.4}
        .drawing .d-suspect-high{stroke:var(--c);stroke-width:1.4}
        .drawing rect.d-suspect-high{stroke-width:3}
        .drawing .d-tag{fill:var(--p);stroke:var(--c);stroke-width:2}
        .drawing .d-tag-edge{fill:var(--c);stroke:none}
        .drawing .d-dimmed{stroke:var(--s);stroke-width:1.8}
        .drawing .d-hit{stroke:none;fill:transparent;pointer-events:all}
        .drawing .dashed{stroke-dasharray:5 4}
        .drawing .measured .d-wire,.drawing .measured .d-symbol,.drawing .measured .d-terminal{stroke-width:4}
        .drawing .hushed *{stroke:var(--h)}
        .drawing .hushed .d-solid,.drawing .hushed polygon.d-symbol{fill:var(--h)}
        .drawing .hushed text{stroke:none;fill:var(--s);font-weight:500}
        .drawing .hushed .d-solid,.drawing .hushed .d-hit{stroke:none}
        """;

    /// <summary>The drawing as one <c>svg</c> element.</summary>
    /// <param name="view">The part to show; the whole when left out.</param>
    /// <param name="isDecoration">Words beside it say the same: hidden from those who listen.</param>
    public static string Write(DrawingList drawing, Box? view = null, bool isDecoration = false)
    {
        var box = view ?? drawing.Bounds;
        var title = isDecoration ? "" : $"<title>{Escape(drawing.Title)}</title>\n";
        var heard = isDecoration ? "aria-hidden=\"true\"" : "role=\"img\"";
        var seen = $"{N(box.X)} {N(box.Y)} {N(box.Width)} {N(box.Height)}";
        return $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" {heard} viewBox=\"{seen}\">\n{title}{All(drawing.Marks)}</svg>\n";
    }

    private static string All(IEnumerable<Mark> marks) => string.Concat(marks.Select(Of));

    private static string Of(Mark mark) =>
        mark switch
        {
            Group g =>
                $"<g data-{NameOf(g.Kind)}=\"{Escape(g.Id)}{ToneOf(g.Tone)}\"><title>{Escape(g.Title)}</title>\n{All(g.Marks)}</g>\n",
            Polyline p => $"{Open("polyline", p.Role, p.IsDashed)} points=\"{Of(p.Points)}\"/>\n",
            Polygon p => $"{Open("polygon", p.Role, false)} points=\"{Of(p.Points)}\"/>\n",
            Rectangle r => $"{Open("rect", r.Role, r.IsDashed)} {Of(r.Box)}{(r.Round > 0 ? $" rx=\"{N(r.Round)}\"" : "")}/>\n",
            Circle c => $"{Open("circle", c.Role, false)} cx=\"{N(c.Centre.X)}\" cy=\"{N(c.Centre.Y)}\" r=\"{N(c.Radius)}\"/>\n",
            Curve c => $"{Open("path", c.Role, c.IsDashed)} d=\"M{Of(c.Start)}{string.Concat(c.Pieces.Select(Of))}\"/>\n",
            Text t =>
                $"{Open("text", t.Role, false)} x=\"{N(t.At.X)}\" y=\"{N(t.At.Y)}\" font-size=\"{N(t.Size)}\" text-anchor=\"{Lower(t.Anchor.ToString())}\">{Escape(t.Words)}</text>\n",
            _ => "",
        };

    private static string Open(string tag, Role role, bool isDashed) => $"<{tag} class=\"{ClassOf(role)}{(isDashed ? " dashed" : "")}\"";

    /// <summary>The class name of a role.</summary>
    public static string ClassOf(Role role) =>
        role switch
        {
            Role.ProbeText => "d-probe-text",
            Role.ProbeRed => "d-probe-red",
            Role.ProbeBlack => "d-probe-black",
            Role.TagEdge => "d-tag-edge",
            Role.SuspectLow => "d-suspect-low",
            Role.SuspectMedium => "d-suspect-medium",
            Role.SuspectHigh => "d-suspect-high",
            _ => "d-" + Lower(role.ToString()),
        };

    private static string NameOf(GroupKind kind) => Lower(kind.ToString());

    private static string Lower(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static string ToneOf(Tone tone) => tone == Tone.Plain ? "" : $"\" class=\"{Lower(tone.ToString())}";

    private static string Of(Spot s) => $"{N(s.X)},{N(s.Y)}";

    private static string Of(Bezier b) => $" C{Of(b.Near)} {Of(b.Far)} {Of(b.End)}";

    private static string Of(IEnumerable<Spot> spots) => string.Join(' ', spots.Select(Of));

    private static string Of(Box box) => $"x=\"{N(box.X)}\" y=\"{N(box.Y)}\" width=\"{N(box.Width)}\" height=\"{N(box.Height)}\"";

    private static string N(double number) => Figure.Of(number);

    private static string Escape(string words) =>
        words
            .Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal);
}
