namespace Ohmstead.Workshop.Drawing;

/// <summary>Draws the two leads as pointed flags, and values between terminals in a column of their own, over a drawing.</summary>
internal sealed class OverlayPainter(CircuitLayout layout, Overlay overlay)
{
    private const double FlagHeight = 28;
    private const double FlagWidth = 64;
    private const double FlagPoint = 15;
    private const double FlagGap = 8;
    private const double ColumnGap = 20;
    private const double ValueSize = 19;
    private const double LineHeight = 22;

    /// <summary>Between the values of two posts.</summary>
    private const double CellGap = 12;

    private readonly List<Group> _done = [];

    public IEnumerable<Mark> Draw(IReadOnlyList<Mark> drawn)
    {
        var terminals = drawn.OfType<Group>().Where(g => g.Kind == GroupKind.Terminal).ToDictionary(g => g.Id, StringComparer.Ordinal);
        var known = overlay.Values.Where(v => terminals.ContainsKey(v.First) && terminals.ContainsKey(v.Second)).ToList();
        var whole = drawn.Select(m => m.Extent).DefaultIfEmpty().Aggregate((a, b) => a.With(b));
        if (overlay.Probe is { } p && terminals.TryGetValue(p.First, out var red) && terminals.TryGetValue(p.Second, out var black))
        {
            var isRedLeft = red.Pins[0].At.X < black.Pins[0].At.X;
            var flags = Flag("red", red, isRedLeft).Concat(Flag("black", black, !isRedLeft)).ToList();
            var pair = new PairValue(p.First, p.Second, p.Expected, p.Measured);
            var title = $"red lead on {Name(p.First)}, black lead on {Name(p.Second)}";
            _done.Add(new(GroupKind.Overlay, "leads", title, [red.Pins[0], black.Pins[0]], [.. flags]));
            whole = flags.Select(m => m.Extent).Aggregate(whole, (a, b) => a.With(b));
            if (p.Expected.Length + p.Measured.Length > 0)
                known.Insert(0, pair);
        }
        Cells(known, terminals, whole);
        return _done;
    }

    private string Name(string terminal) => layout.Names.Terminal(terminal);

    /// <summary>A flag that points at a post from outside; at a terminal within, from the strip below its line.</summary>
    /// <param name="isLeft">It reaches to the left of a terminal within: so two beside each other stay apart.</param>
    private static IEnumerable<Mark> Flag(string word, Group terminal, bool isLeft)
    {
        var role = word == "red" ? Role.ProbeRed : Role.ProbeBlack;
        var at = terminal.Pins[0].At;
        var circle = terminal.Marks.OfType<Circle>().Last();
        Box box;
        if (circle.Radius > SymbolSize.Terminal)
        {
            var side = Math.Sign(at.X);
            var names = terminal.Marks.OfType<Text>().Select(t => t.Extent).ToList();
            var tip =
                side > 0
                    ? names.Select(n => n.Right).Append(at.X + circle.Radius).Max() + FlagGap
                    : names.Select(n => n.X).Append(at.X - circle.Radius).Min() - FlagGap;
            var (near, far) = (tip + (side * FlagPoint), tip + (side * (FlagPoint + FlagWidth)));
            var (top, bottom) = (at.Y - (FlagHeight / 2), at.Y + (FlagHeight / 2));
            yield return new Polygon(role, [new(tip, at.Y), new(near, top), new(far, top), new(far, bottom), new(near, bottom)]);
            box = Box.Of(new(near, top), new(far, bottom));
        }
        else
        {
            var (top, left) = (at.Y + SymbolSize.Terminal + 9, isLeft ? at.X + 8 - FlagWidth : at.X - 8);
            box = new(left, top, FlagWidth, ItemSize.Strip - SymbolSize.Terminal - 9);
            yield return new Polygon(
                role,
                [
                    new(at.X, at.Y + SymbolSize.Terminal + 1),
                    new(at.X + 8, top),
                    new(isLeft ? at.X + 8 : box.Right, top),
                    new(isLeft ? at.X + 8 : box.Right, box.Bottom),
                    new(box.X, box.Bottom),
                    new(box.X, top),
                    new(at.X - 8, top),
                ]
            );
        }
        yield return new Text(
            Role.ProbeText,
            word,
            new(box.X + (box.Width / 2), box.Y + (box.Height / 2) + 5.5),
            Anchor.Middle,
            ItemSize.SmallSize
        );
    }

    private void Cells(List<PairValue> pairs, Dictionary<string, Group> terminals, Box whole)
    {
        var common = pairs
            .SelectMany(p => new[] { p.First, p.Second })
            .GroupBy(t => t, StringComparer.Ordinal)
            .Where(g => g.Count() > 1)
            .MaxBy(g => g.Count())
            ?.Key;
        var below = whole.Bottom + (1.5 * LineHeight);
        foreach (
            var side in pairs
                .Select(p => (Pair: p, Own: p.First == common ? p.Second : p.First))
                .OrderBy(p => At(p.Own).Y)
                .GroupBy(p => IsAtPosts(p.Pair))
        )
        {
            var next = double.NegativeInfinity;
            foreach (var (pair, own) in side)
            {
                Text[] marks;
                if (!side.Key)
                {
                    marks = [Line(Role.Value, SaidOf(pair), whole.X + (whole.Width / 2), below, Anchor.Middle)];
                    below += LineHeight;
                }
                else
                {
                    var x = whole.Right + ColumnGap;
                    var y = Math.Max(At(own).Y + 5, next);
                    marks = [.. Lines(pair).Select((l, n) => Line(l.Role, l.Words, x, y + (n * LineHeight), Anchor.Start))];
                    next = y + (marks.Length * LineHeight) + CellGap;
                }
                _done.Add(
                    new(
                        GroupKind.Overlay,
                        pair.First + "/" + pair.Second,
                        SaidOf(pair),
                        [terminals[pair.First].Pins[0], terminals[pair.Second].Pins[0]],
                        [.. marks]
                    )
                );
            }
        }

        Spot At(string terminal) => terminals[terminal].Pins[0].At;

        // Beside the posts where both ends are there; otherwise below, with both names.
        bool IsAtPosts(PairValue p) =>
            layout.Sides.Outer.Contains(p.First) && layout.Sides.Outer.Contains(p.Second) && At(p.First).X > 0 && At(p.Second).X > 0;
    }

    private static Text Line(Role role, string words, double x, double y, Anchor anchor) =>
        new(role, words, new(x, y), anchor, role == Role.Value ? ValueSize : ItemSize.SmallSize);

    private IEnumerable<(Role Role, string Words)> Lines(PairValue pair)
    {
        if (pair.Measured.Length > 0)
            yield return (Role.Value, pair.Measured);
        yield return (Role.Small, $"{Name(pair.First)} to {Name(pair.Second)}");
        if (pair.Expected.Length > 0)
            yield return (Role.Small, $"({pair.Expected})");
    }

    private string SaidOf(PairValue pair) =>
        $"{Name(pair.First)} to {Name(pair.Second)}: "
        + string.Join(
            ", ",
            new[] { pair.Measured, pair.Expected.Length > 0 ? "should read " + pair.Expected : "" }
                .Where(w => w.Length > 0)
                .DefaultIfEmpty("not taken")
        );
}
