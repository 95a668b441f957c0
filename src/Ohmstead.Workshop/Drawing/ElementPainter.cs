using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawing;

/// <summary>Draws elements and terminals as groups, with what is laid over them.</summary>
internal sealed class ElementPainter(CircuitLayout layout, Overlay overlay)
{
    /// <summary>A finger needs this much, each way.</summary>
    private const double HitSize = 48;

    private const double HaloHalfHeight = 15;

    private DrawnNames Names => layout.Names;

    /// <summary>An element as an item of a line.</summary>
    public Item ItemOf(Element e) => new(e, "", true, Names.Of(e));

    /// <summary>An element on a line.</summary>
    public Group OnLine(Item item, Spot at, bool isFromLeft)
    {
        var (e, size) = (item.Element!, ItemSize.Of(item));
        var marks = new List<Mark>();
        AddHalo(marks, e.Id, new(at.X - size.Half + 1, at.Y - HaloHalfHeight, (2 * size.Half) - 2, 2 * HaloHalfHeight));
        marks.AddRange(Symbols.Of(e.Kind, at, size.Half, isFromLeft, IsClosed(e), overlay.Lifted.Contains(e.Id)));
        AddName(
            marks,
            item.Label,
            new(at.X, at.Y - ItemSize.AboveGap),
            Anchor.Middle,
            ItemSize.IsSmall(e.Kind) ? Role.Small : Role.Label,
            size.TextSize
        );
        AddWords(marks, e.Id, new(at.X, at.Y + ItemSize.BelowGap), Anchor.Middle);
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
        double[] stops = [.. placed.Ports.Where(p => p.Port.Slider is null).Select(p => p.Y)];
        var isLifted = overlay.Lifted.Contains(w.Id);
        marks.AddRange(
            w.IsOnCore
                ? WindingSign.Of(x, outward, stops, isFromTop ? placed.Top + 9 : placed.Bottom - 9, isLifted)
                : [WindingSign.ZigZag(x, outward, stops, isLifted)]
        );
        var name = Names.Lines(w.Id);
        var labelX = x + (outward * 14);
        var anchor = outward > 0 ? Anchor.Start : Anchor.End;
        var y = placed.LabelY - (WindingLabel.HeightOf(Names, w) / 2) + (name.Length * ItemSize.NameSize);
        AddName(marks, name, new(labelX, y), anchor, Role.Label, ItemSize.NameSize);
        y += ItemSize.SmallSize + 2;
        if (name.Length > 0 && !UntypedIds.IsOne(layout.Sheet))
            marks.Add(
                new Text(
                    Role.Small,
                    w.IsOnCore ? Figure.Of(w.Turns) + " turns" : ValueText.Of(w.Ohms, Quantity.Ohms),
                    new(labelX, y),
                    anchor,
                    ItemSize.SmallSize
                )
            );
        AddWords(marks, w.Id, new(labelX, y + ItemSize.SmallSize + 2), anchor);
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
        AddHalo(marks, slider.Id, new Box(near, y - SliderSign.HalfRail, SliderSign.Rail, 2 * SliderSign.HalfRail).Grown(5));
        marks.AddRange(SliderSign.Of(x, y, outward, share));
        var anchor = outward > 0 ? Anchor.Start : Anchor.End;
        var labelX = x + (outward * LinePacking.SliderName);
        AddName(marks, Names.Lines(slider.Id), new(labelX, y - SliderSign.NameGap), anchor, Role.Label, ItemSize.NameSize);
        AddWords(marks, slider.Id, new(labelX, y + ItemSize.BelowGap), anchor);
        var title =
            Names.Part(slider.Id)
            + (placed.Winding.Winding.IsOnCore ? $", turns {Figure.Of(slider.FromTurn)} to {Figure.Of(slider.ToTurn)}" : "")
            + (slider.IsOff(position) ? ", off" : $", at {ValueText.Percent(position)} of its travel");
        return Group(slider.Id, title + WordsOf(slider.Id), [new(slider.To, new(x + (outward * SliderSign.Rail), y))], marks);
    }

    /// <summary>A terminal inside the unit: a ring; its name is its title.</summary>
    public Group Terminal(string id, Spot at) =>
        new(
            GroupKind.Terminal,
            id,
            Names.Terminal(id),
            [new(id, at)],
            [new Circle(Role.Hit, at, HitSize / 3.2), new Circle(Role.Terminal, at, SymbolSize.Terminal)]
        );

    /// <summary>A post or blade at the edge of the drawing, its name beside it.</summary>
    public Group Post(Item item, Spot at, int outward)
    {
        var marks = new List<Mark> { new Circle(Role.Hit, at, HitSize / 2), new Circle(Role.Terminal, at, SymbolSize.Post) };
        var height = (item.Label.Length - 1) * ItemSize.PostSize;
        AddName(
            marks,
            item.Label,
            new(at.X + (outward * (SymbolSize.Post + 8)), at.Y + 6.5 + (height / 2)),
            outward > 0 ? Anchor.Start : Anchor.End,
            Role.Label,
            ItemSize.PostSize
        );
        return new(GroupKind.Terminal, item.Terminal, Names.Terminal(item.Terminal), [new(item.Terminal, at)], [.. marks]);
    }

    /// <summary>The lines of a name, the last one at the point.</summary>
    private static void AddName(List<Mark> marks, string[] lines, Spot last, Anchor anchor, Role role, double size) =>
        marks.AddRange(
            lines.Select((line, n) => new Text(role, line, last with { Y = last.Y - ((lines.Length - 1 - n) * size) }, anchor, size))
        );

    private Group Group(string id, string title, ImmutableArray<Pin> pins, List<Mark> marks)
    {
        var box = marks.Select(m => m.Extent).Aggregate((a, b) => a.With(b));
        var (width, height) = (Math.Max(0, HitSize - box.Width), Math.Max(0, HitSize - box.Height));
        var hit = new Rectangle(Role.Hit, new(box.X - (width / 2), box.Y - (height / 2), box.Width + width, box.Height + height));
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

    private void AddWords(List<Mark> marks, string id, Spot at, Anchor anchor)
    {
        var chance = overlay.Suspicion.GetValueOrDefault(id);
        var words =
            chance >= Suspect.Least ? Suspect.FigureOf(chance)
            : overlay.Lifted.Contains(id) ? "out"
            : overlay.Renewed.Contains(id) ? "new"
            : "";
        if (chance >= Suspect.Least && overlay.Tags.TryGetValue(id, out var tag))
            marks.AddRange(TagOf(tag, at, anchor));
        else if (words.Length > 0)
            marks.Add(new Text(Role.Value, words, at, anchor, ItemSize.SmallSize));
    }

    /// <summary>A luggage tag with a thick left edge, where the figure alone would stand.</summary>
    private static IEnumerable<Mark> TagOf(string words, Spot at, Anchor anchor)
    {
        var width = ItemSize.TagEdge + (2 * ItemSize.TagRoom) + TextWidth.OfBold(words, ItemSize.SmallSize);
        var left = anchor switch
        {
            Anchor.Start => at.X,
            Anchor.Middle => at.X - (width / 2),
            _ => at.X - width,
        };
        var box = new Box(left, at.Y - ItemSize.SmallSize, width, ItemSize.SmallSize + 6);
        yield return new Rectangle(Role.Tag, box, 3);
        yield return new Rectangle(Role.TagEdge, box with { Width = ItemSize.TagEdge });
        yield return new Text(
            Role.Label,
            words,
            at with
            {
                X = left + ItemSize.TagEdge + ItemSize.TagRoom,
            },
            Anchor.Start,
            ItemSize.SmallSize
        );
    }

    private string WordsOf(string id)
    {
        var chance = overlay.Suspicion.GetValueOrDefault(id);
        return (
                chance >= Suspect.Least ? $"{(overlay.Tags.TryGetValue(id, out var tag) ? $", {tag}" : "")}, {Suspect.WordsOf(chance)}" : ""
            )
            + (overlay.Lifted.Contains(id) ? ", taken out" : "")
            + (overlay.Renewed.Contains(id) ? ", new" : "");
    }

    private string TitleOf(Element e) =>
        $"{Names.Part(e.Id)}, between {Names.Terminal(e.From)} and {Names.Terminal(e.To)}"
        + (
            e is Switch
                ? IsClosed(e)
                    ? ", closed"
                    : ", open"
                : ""
        )
        + WordsOf(e.Id);

    private bool IsClosed(Element e) => MeasuredPath.IsClosed(layout.Sheet, e, overlay.Controls);
}
