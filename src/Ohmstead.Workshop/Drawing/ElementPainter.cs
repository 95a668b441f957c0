using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>Draws elements and terminals as groups, with what is laid over them.</summary>
internal sealed class ElementPainter(CircuitLayout layout, Overlay overlay)
{
    /// <summary>A finger needs this much, each way.</summary>
    private const double HitSize = 48;

    private const double HaloHalfHeight = 16;

    /// <summary>An element on a line.</summary>
    public Group OnLine(Element e, Spot at, bool isFromLeft)
    {
        var size = ItemSize.Of(new Item(e, "", true));
        var marks = new List<Mark>();
        var height = ItemSize.AboveGap + (size.Label.Length * size.TextSize);
        AddHalo(
            marks,
            e.Id,
            new(at.X - size.Half + 1, at.Y - HaloHalfHeight + 2, (2 * size.Half) - 2, (2 * HaloHalfHeight) - 4)
        );
        marks.AddRange(Symbols.Of(e, at, size.Half, isFromLeft, IsClosed(e), overlay.Lifted.Contains(e.Id)));
        for (var n = 0; n < size.Label.Length; n++)
        {
            var y = at.Y - ItemSize.AboveGap - ((size.Label.Length - 1 - n) * size.TextSize);
            marks.Add(
                new Text(
                    size.IsSmall ? Role.Small : Role.Label,
                    size.Label[n],
                    new(at.X, y),
                    Anchor.Middle,
                    size.TextSize
                )
            );
        }
        AddWords(marks, e.Id, new(at.X, at.Y - height - 1), Anchor.Middle, size.IsSmall);
        var (from, to) = (new Spot(at.X - size.Half, at.Y), new Spot(at.X + size.Half, at.Y));
        return Group(e.Id, TitleOf(e), [new(e.From, isFromLeft ? from : to), new(e.To, isFromLeft ? to : from)], marks);
    }

    public Group Winding(PlacedWinding placed, double x, int outward)
    {
        var w = placed.Winding.Winding;
        var marks = new List<Mark>();
        var isFromTop = placed.Ports[0].Port == placed.Winding.Fixed[0];
        var coilX = outward > 0 ? x - SymbolSize.Bulge : x;
        AddHalo(marks, w.Id, new Box(coilX, placed.Top, SymbolSize.Bulge, placed.Bottom - placed.Top).Grown(4));
        marks.AddRange(
            WindingSign.Of(
                x,
                outward,
                [.. placed.Ports.Where(p => p.Port.Slider is null).Select(p => p.Y)],
                isFromTop ? placed.Top + 9 : placed.Bottom - 9,
                overlay.Lifted.Contains(w.Id)
            )
        );
        var name = WindingLabel.Name(w);
        var labelX = x + (outward * 14);
        var anchor = outward > 0 ? Anchor.Start : Anchor.End;
        var y = placed.LabelY - (WindingLabel.HeightOf(w) / 2) + WindingLabel.TextSize;
        foreach (var line in name)
        {
            marks.Add(new Text(Role.Label, line, new(labelX, y), anchor, WindingLabel.TextSize));
            y += WindingLabel.TextSize;
        }
        marks.Add(new Text(Role.Small, Figure.Of(w.Turns) + " turns", new(labelX, y), anchor, ItemSize.SmallSize));
        AddWords(marks, w.Id, new(labelX, y + ItemSize.NameSize + 1), anchor);
        return Group(
            w.Id,
            TitleOf(w),
            [.. placed.Ports.Where(p => p.Port.Slider is null).Select(p => new Pin(p.Port.Terminal, new(x, p.Y)))],
            marks
        );
    }

    public Group Slider(PlacedWinding placed, Slider slider, double x, double y, int outward)
    {
        var marks = new List<Mark>();
        var isFromTop = placed.Ports[0].Port == placed.Winding.Fixed[0];
        var position = overlay.Controls.TryGetValue(slider.Control, out var p) ? p.Throttle : 0;
        var share = isFromTop == slider.FromTurn <= slider.ToTurn ? position : 1 - position;
        var near = outward > 0 ? x : x - SliderSign.Rail;
        AddHalo(
            marks,
            slider.Id,
            new Box(near, y - SliderSign.HalfRail, SliderSign.Rail, 2 * SliderSign.HalfRail).Grown(5)
        );
        marks.AddRange(SliderSign.Of(x, y, outward, share));
        var anchor = outward > 0 ? Anchor.Start : Anchor.End;
        var labelX = x + (outward * LinePacking.SliderName);
        marks.Add(new Text(Role.Label, slider.Id, new(labelX, y - 9), anchor, ItemSize.NameSize));
        AddWords(marks, slider.Id, new(labelX, y - 9 - ItemSize.NameSize), anchor);
        var title =
            $"{slider.Id}, slider of {slider.Control}, turns {Figure.Of(slider.FromTurn)} to {Figure.Of(slider.ToTurn)}, at {Figure.Of(position)} of its travel";
        return Group(
            slider.Id,
            title + Words(slider.Id),
            [new(slider.To, new(x + (outward * SliderSign.Rail), y))],
            marks
        );
    }

    /// <summary>A terminal with its name.</summary>
    /// <param name="isPost">At the edge of the drawing: larger.</param>
    public static Group Terminal(string id, Spot at, Spot labelAt, Anchor anchor, bool isPost)
    {
        var lines = isPost ? [id] : ItemSize.OfTerminal(id).Label;
        var size = isPost ? ItemSize.PostSize : ItemSize.SmallSize;
        IEnumerable<Mark> names = lines.Select(
            (line, n) =>
                new Text(
                    isPost ? Role.Label : Role.Small,
                    line,
                    labelAt with
                    {
                        Y = labelAt.Y + (n * size),
                    },
                    anchor,
                    size
                )
        );
        var circle = new Circle(Role.Terminal, at, isPost ? SymbolSize.Post : SymbolSize.Terminal);
        var hit = new Circle(Role.Hit, at, HitSize / 2 / (isPost ? 1 : 1.6));
        return new(GroupKind.Terminal, id, "terminal " + id, [new(id, at)], [hit, circle, .. names]);
    }

    private Group Group(string id, string title, ImmutableArray<Pin> pins, List<Mark> marks)
    {
        var box = marks.Select(m => m.Extent).Aggregate((a, b) => a.With(b));
        var (width, height) = (Math.Max(0, HitSize - box.Width), Math.Max(0, HitSize - box.Height));
        var hit = new Rectangle(
            Role.Hit,
            new(box.X - (width / 2), box.Y - (height / 2), box.Width + width, box.Height + height)
        );
        return new(GroupKind.Element, id, title, pins, [hit, .. marks]);
    }

    private void AddHalo(List<Mark> marks, string id, Box box)
    {
        if (overlay.Suspicion.GetValueOrDefault(id) is var chance && chance < Suspect.Least)
            return;
        var role = Suspect.RoleOf(chance);
        if (role == Role.SuspectHigh)
            marks.AddRange(Hatch.Of(role, box, 7));
        else if (role == Role.SuspectMedium)
            marks.AddRange(Hatch.Of(role, box, 14));
        marks.Add(new Rectangle(role, box, 6, role == Role.SuspectLow));
    }

    private void AddWords(List<Mark> marks, string id, Spot at, Anchor anchor, bool isShort = false)
    {
        var chance = overlay.Suspicion.GetValueOrDefault(id);
        var words =
            chance >= Suspect.Least ? (isShort ? Suspect.FigureOf(chance) : Suspect.WordsOf(chance))
            : overlay.Lifted.Contains(id) ? "lifted"
            : overlay.Renewed.Contains(id) ? "new"
            : "";
        if (words.Length > 0)
            marks.Add(new Text(Role.Value, words, at, anchor, ItemSize.SmallSize));
    }

    private string Words(string id)
    {
        var chance = overlay.Suspicion.GetValueOrDefault(id);
        return (chance >= Suspect.Least ? ", " + Suspect.WordsOf(chance) : "")
            + (overlay.Lifted.Contains(id) ? ", lifted" : "")
            + (overlay.Renewed.Contains(id) ? ", new" : "");
    }

    private string TitleOf(Element e) =>
        $"{e.Id}, {e.Kind}, from {e.From} to {e.To}"
        + (
            e is Switch s
                ? $", {(IsClosed(e) ? "closed" : "open")}, closed when {s.Control} is {string.Join(" or ", s.ClosedIn)}"
                : ""
        )
        + Words(e.Id);

    private bool IsClosed(Element e)
    {
        if (e is not Switch s)
            return true;
        var rest = layout.Sheet.Controls.FirstOrDefault(c => c.Id == s.Control)?.Rest ?? "";
        return s.ClosedIn.Contains(overlay.Controls.TryGetValue(s.Control, out var p) ? p.Selector : rest);
    }
}
