namespace Ohmstead.Workshop.Drawing;

/// <summary>An upright rectangle.</summary>
public readonly record struct Box(double X, double Y, double Width, double Height)
{
    /// <summary>The right edge.</summary>
    public double Right => X + Width;

    /// <summary>The lower edge.</summary>
    public double Bottom => Y + Height;

    /// <summary>The smallest box around some points.</summary>
    public static Box Of(params ReadOnlySpan<Spot> spots)
    {
        var (left, top, right, bottom) = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        foreach (var s in spots)
        {
            (left, right) = (Math.Min(left, s.X), Math.Max(right, s.X));
            (top, bottom) = (Math.Min(top, s.Y), Math.Max(bottom, s.Y));
        }
        return new(left, top, right - left, bottom - top);
    }

    /// <summary>The smallest box around both.</summary>
    public Box With(Box other) => Of(new(X, Y), new(Right, Bottom), new(other.X, other.Y), new(other.Right, other.Bottom));

    /// <summary>This box, larger by a margin on each side.</summary>
    public Box Grown(double margin) => new(X - margin, Y - margin, Width + (2 * margin), Height + (2 * margin));

    /// <summary>What of this box lies in <paramref name="whole"/>.</summary>
    public Box Within(Box whole)
    {
        var (x, y) = (Math.Max(X, whole.X), Math.Max(Y, whole.Y));
        return new(x, y, Math.Min(Right, whole.Right) - x, Math.Min(Bottom, whole.Bottom) - y);
    }

    /// <summary>True when all of the other lies in this box, but for rounding.</summary>
    public bool Holds(Box other)
    {
        var grown = Grown(1e-6);
        return other.X >= grown.X && other.Y >= grown.Y && other.Right <= grown.Right && other.Bottom <= grown.Bottom;
    }

    /// <summary>True when the two share more than an edge.</summary>
    public bool Overlaps(Box other) => X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;
}

/// <summary>A point in the drawing.</summary>
public readonly record struct Spot(double X, double Y);
