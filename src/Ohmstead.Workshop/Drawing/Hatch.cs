namespace Ohmstead.Workshop.Drawing;

/// <summary>Slanting lines that fill a box.</summary>
internal static class Hatch
{
    /// <param name="step">Distance from line to line along the edge.</param>
    public static IEnumerable<Mark> Of(Role role, Box box, double step)
    {
        for (var at = step; at < box.Width + box.Height; at += step)
        {
            var (low, high) = (Math.Max(0, at - box.Height), Math.Min(at, box.Width));
            if (high - low > 1)
                yield return new Polyline(role, [new(box.X + low, box.Y + at - low), new(box.X + high, box.Y + at - high)]);
        }
    }
}
