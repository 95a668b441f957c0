namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>
/// How one mass answers to power and room over a timeline, at the moments asked for, as a share of its final rise. It warms as
/// dx/dt = (p − x^(1+m))/τ: m = 0 is cooling in proportion to the rise, above it a case that cools better when hotter.
/// </summary>
internal static class HeatShapes
{
    private const double LongestStep = 0.5;

    /// <summary>Steps of any run are at most so many, however long it lasts.</summary>
    private const double MostSteps = 2000;

    /// <summary>The share of the final rise that is reached at each moment.</summary>
    public static double[] OfPower(HeatTimeline line, double tau, double better) =>
        Follow(
            line,
            0,
            (x, from, to) =>
            {
                var power = line.PowerBefore(from, to);
                if (better == 0)
                    return power + ((x - power) * Math.Exp(-(to - from) / tau));
                // Runge and Kutta's second order on a smooth stretch; a step is a small part of τ.
                var steps = Math.Ceiling((to - from) / StepOf(line, tau));
                var h = (to - from) / steps;
                double Slope(double at) => (power - Math.Pow(Math.Max(at, 0), 1 + better)) / tau;
                for (var n = 0; n < steps; n++)
                {
                    var middle = x + (h / 2 * Slope(x));
                    x += h * Slope(middle);
                }
                return x;
            }
        );

    /// <summary>How warm the mass would be from the room alone, as warm as the room at the start.</summary>
    public static double[] OfRoom(HeatTimeline line, double tau) =>
        Follow(
            line,
            line.RoomAt(0),
            (y, from, to) =>
            {
                // Exactly, for a room that goes straight from a to b.
                var (a, b, span) = (line.RoomAt(from), line.RoomAt(to), to - from);
                var lag = (b - a) * tau / span;
                return b - lag + ((y - a + lag) * Math.Exp(-span / tau));
            }
        );

    private static double StepOf(HeatTimeline line, double tau) => Math.Max(Math.Min(LongestStep, tau / 8), line.Pieces[^1] / MostSteps);

    private static double[] Follow(HeatTimeline line, double start, Func<double, double, double, double> across)
    {
        var (state, time, values) = (start, 0.0, new Dictionary<double, double> { [0] = start });
        foreach (var next in line.Pieces.Where(p => p > 0))
        {
            state = across(state, time, next);
            time = next;
            values[next] = state;
        }
        return [.. line.Asked.Select(m => values[m])];
    }
}
