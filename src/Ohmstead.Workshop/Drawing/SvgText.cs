using System.Globalization;
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
    /// <param name="withStyle">Puts <see cref="Style"/> in, so that the text stands alone as a file.</param>
    /// <param name="isDecoration">Words beside it say the same: hidden from those who listen.</param>
    public static string Write(DrawingList drawing, Box? view = null, bool withStyle = true, bool isDecoration = false)
    {
        var box = view ?? drawing.Bounds;
        var text = new StringBuilder();
        text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" ")
            .Append(isDecoration ? "aria-hidden=\"true\"" : "role=\"img\"")
            .Append(" viewBox=\"")
            .Append(Join(box.X, box.Y, box.Width, box.Height))
            .Append("\">\n");
        if (!isDecoration)
            text.Append("<title>").Append(Escape(drawing.Title)).Append("</title>\n");
        if (withStyle)
            text.Append("<style>\n").Append(Style).Append("\n</style>\n");
        foreach (var mark in drawing.Marks)
            Append(text, mark);
        return text.Append("</svg>\n").ToString();
    }

    private static void Append(StringBuilder text, Mark mark)
    {
        switch (mark)
        {
            case Group g:
                text.Append("<g data-")
                    .Append(NameOf(g.Kind))
                    .Append("=\"")
                    .Append(Escape(g.Id))
                    .Append(g.Tone == Tone.Plain ? "" : "\" class=\"" + Lower(g.Tone.ToString()))
                    .Append("\"><title>")
                    .Append(Escape(g.Title))
                    .Append("</title>\n");
                foreach (var inner in g.Marks)
                    Append(text, inner);
                text.Append("</g>\n");
                break;
            case Polyline p:
                Open(text, "polyline", p.Role, p.IsDashed).Append(" points=\"").AppendJoin(' ', p.Points.Select(Of)).Append("\"/>\n");
                break;
            case Polygon p:
                Open(text, "polygon", p.Role, false).Append(" points=\"").AppendJoin(' ', p.Points.Select(Of)).Append("\"/>\n");
                break;
            case Rectangle r:
                Open(text, "rect", r.Role, r.IsDashed)
                    .Append(" x=\"")
                    .Append(N(r.Box.X))
                    .Append("\" y=\"")
                    .Append(N(r.Box.Y))
                    .Append("\" width=\"")
                    .Append(N(r.Box.Width))
                    .Append("\" height=\"")
                    .Append(N(r.Box.Height))
                    .Append(r.Round > 0 ? "\" rx=\"" + N(r.Round) : "")
                    .Append("\"/>\n");
                break;
            case Circle c:
                Open(text, "circle", c.Role, false)
                    .Append(" cx=\"")
                    .Append(N(c.Centre.X))
                    .Append("\" cy=\"")
                    .Append(N(c.Centre.Y))
                    .Append("\" r=\"")
                    .Append(N(c.Radius))
                    .Append("\"/>\n");
                break;
            case Curve c:
                Open(text, "path", c.Role, c.IsDashed).Append(" d=\"M").Append(Of(c.Start));
                foreach (var b in c.Pieces)
                    text.Append(" C").Append(Of(b.Near)).Append(' ').Append(Of(b.Far)).Append(' ').Append(Of(b.End));
                text.Append("\"/>\n");
                break;
            case Text t:
                Open(text, "text", t.Role, false)
                    .Append(" x=\"")
                    .Append(N(t.At.X))
                    .Append("\" y=\"")
                    .Append(N(t.At.Y))
                    .Append("\" font-size=\"")
                    .Append(N(t.Size))
                    .Append("\" text-anchor=\"")
                    .Append(
                        t.Anchor switch
                        {
                            Anchor.Start => "start",
                            Anchor.Middle => "middle",
                            _ => "end",
                        }
                    )
                    .Append("\">")
                    .Append(Escape(t.Words))
                    .Append("</text>\n");
                break;
        }
    }

    private static StringBuilder Open(StringBuilder text, string tag, Role role, bool isDashed) =>
        text.Append('<').Append(tag).Append(" class=\"").Append(ClassOf(role)).Append(isDashed ? " dashed\"" : "\"");

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

    private static string Of(Spot s) => N(s.X) + "," + N(s.Y);

    private static string Join(params ReadOnlySpan<double> numbers)
    {
        var text = new StringBuilder();
        foreach (var n in numbers)
            text.Append(text.Length > 0 ? " " : "").Append(N(n));
        return text.ToString();
    }

    private static string N(double number) => Figure.Of(number);

    private static string Escape(string words) =>
        words
            .Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal);
}
