namespace Ohmstead.Workshop.Drawing;

/// <summary>Brings the windings of both sides to the same height on their cores.</summary>
internal static class SideAlignment
{
    /// <summary>A winding this much shorter than its partners across the core is drawn longer: it looks lost otherwise.</summary>
    private const double LeastShare = 0.45;

    private const double MostStretch = 4;

    /// <summary>Between the windings of two cores.</summary>
    private const double CoreGap = 70;

    /// <param name="cores">Cores, and one more for the wires of resistors.</param>
    public static (PlacedSide Mains, PlacedSide Posts) Align(PlacedSide mains, PlacedSide posts, int cores)
    {
        var floor = double.NegativeInfinity;
        for (var k = 0; k < cores; k++)
        {
            (mains, posts) = (Stretch(mains, Reach(posts, k), k), Stretch(posts, Reach(mains, k), k));
            if (Reach(mains, k) is { } a && Reach(posts, k) is { } b)
            {
                var shift = Math.Round(((b.Top + b.Bottom) / 2) - ((a.Top + a.Bottom) / 2));
                if (shift > 0)
                    mains = Shift(mains, a.Top, shift, k);
                else
                    posts = Shift(posts, b.Top, -shift, k);
            }
            var top = Math.Min(Reach(mains, k)?.Top ?? double.MaxValue, Reach(posts, k)?.Top ?? double.MaxValue);
            if (top < floor + CoreGap)
            {
                if (Reach(mains, k) is { } m)
                    mains = Shift(mains, m.Top, floor + CoreGap - top, k);
                if (Reach(posts, k) is { } p)
                    posts = Shift(posts, p.Top, floor + CoreGap - top, k);
            }
            floor = Math.Max(Reach(mains, k)?.Bottom ?? floor, Reach(posts, k)?.Bottom ?? floor);
        }
        return (mains, posts);
    }

    /// <summary>From where to where the windings of a core reach on a side; null without any.</summary>
    public static (double Top, double Bottom)? Reach(PlacedSide side, int core)
    {
        var windings = side.Windings.Where(w => w.Winding.CoreIndex == core).ToList();
        return windings.Count == 0 ? null : (windings.Min(w => w.Top), windings.Max(w => w.Bottom));
    }

    private static PlacedSide Stretch(PlacedSide side, (double Top, double Bottom)? other, int core)
    {
        if (Reach(side, core) is not { } own || other is not { } far)
            return side;
        var (height, wanted) = (own.Bottom - own.Top, LeastShare * (far.Bottom - far.Top));
        if (height <= 0 || height >= wanted)
            return side;
        var factor = Math.Min(MostStretch, wanted / height);
        return side.MapY(y =>
            y <= own.Top ? y : Math.Round(own.Top + (Math.Min(y, own.Bottom) - own.Top) * factor + Math.Max(0, y - own.Bottom))
        );
    }

    private static PlacedSide Shift(PlacedSide side, double from, double by, int core) =>
        side.MapY(y => core == 0 || y >= from ? y + by : y);
}
