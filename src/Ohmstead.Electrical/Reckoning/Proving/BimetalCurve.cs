namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>
/// A thermal breaker as a bimetal of one mass: seconds = τ·ln((I² − x₀F²)/(I² − F²)), never for I ≤ F. One mass is common practice,
/// no source.
/// </summary>
/// <param name="FloorAmps">F: what it carries for ever.</param>
/// <param name="TauSeconds">τ.</param>
public readonly record struct BimetalCurve(double FloorAmps, double TauSeconds)
{
    /// <summary>Seconds until it trips; infinite where it never does.</summary>
    /// <param name="amps">From now on.</param>
    /// <param name="heatLeft">x₀: the share of the tripping heat that is in it, 0 cold, at most 1.</param>
    public double Seconds(double amps, double heatLeft)
    {
        var (square, floor) = (amps * amps, FloorAmps * FloorAmps);
        return square <= floor
            ? double.PositiveInfinity
            : TauSeconds * Math.Log((square - (Math.Min(heatLeft, 1) * floor)) / (square - floor));
    }

    /// <summary>Heat left by a load carried for long.</summary>
    public double HeatOf(double beforeAmps) => Math.Min(1, beforeAmps * beforeAmps / (FloorAmps * FloorAmps));

    /// <summary>g(I) = −ln(1 − F²/I²): seconds from cold in units of τ.</summary>
    private static double Shape(double amps, double floorSquare) => -Log1MinusRatio(floorSquare / (amps * amps));

    /// <summary>ln(1 − x), with its digits where x is small.</summary>
    private static double Log1MinusRatio(double x) => x < 1e-5 ? -x * (1 + (x / 2) + (x * x / 3)) : Math.Log(1 - x);

    /// <summary>From one trip and a τ: F = I√(1 − e^(−t/τ)).</summary>
    public static BimetalCurve Through(Trip trip, double tau) => new(trip.Amps * Math.Sqrt(1 - Math.Exp(-trip.Seconds / tau)), tau);

    /// <summary>From two trips, the first at fewer amps: F from g(I₁)/g(I₂) = t₁/t₂. Null where none fits: t₁/t₂ ≤ (I₂/I₁)².</summary>
    public static BimetalCurve? Through(Trip few, Trip many)
    {
        var (wanted, most) = (few.Seconds / many.Seconds, few.Amps * few.Amps);
        if (few.Amps >= many.Amps || wanted <= many.Amps * many.Amps / most)
            return null;
        // The ratio grows with F² from (I₂/I₁)² at 0 to infinity at I₁².
        var (low, high) = (0.0, 1.0);
        for (var n = 0; n < 200; n++)
        {
            var middle = (low + high) / 2;
            if (Shape(few.Amps, middle * most) / Shape(many.Amps, middle * most) < wanted)
                low = middle;
            else
                high = middle;
        }
        var square = (low + high) / 2 * most;
        return square > 0 && high < 1 ? new(Math.Sqrt(square), few.Seconds / Shape(few.Amps, square)) : null;
    }

    /// <summary>From three and more: least squares of ln t over F, τ being the mean that goes with it. Null where they fall no faster than 1/I².</summary>
    public static BimetalCurve? Through(IReadOnlyList<Trip> trips)
    {
        var least = trips.Min(t => t.Amps);
        // u = −ln(1 − F²/I²) of the lowest amps: even steps of it are even steps of the curve's shape.
        double SquareOf(double u) => least * least * (1 - Math.Exp(-u));
        (double Sum, double LogTau) At(double u)
        {
            var off = trips.Select(t => Math.Log(t.Seconds) - Math.Log(Shape(t.Amps, SquareOf(u)))).ToArray();
            var mean = off.Average();
            return (off.Sum(o => (o - mean) * (o - mean)), mean);
        }
        const int Steps = 400;
        double Grid(int n) => 1e-4 * Math.Pow(35 / 1e-4, n / (double)Steps);
        var best = Enumerable.Range(0, Steps + 1).MinBy(n => At(Grid(n)).Sum);
        if (best is 0 or Steps)
            return null;
        var (low, high) = (Grid(best - 1), Grid(best + 1));
        for (var n = 0; n < 100; n++)
        {
            var (a, b) = (low + ((high - low) / 3), high - ((high - low) / 3));
            if (At(a).Sum < At(b).Sum)
                high = b;
            else
                low = a;
        }
        var u = (low + high) / 2;
        return new(Math.Sqrt(SquareOf(u)), Math.Exp(At(u).LogTau));
    }
}

/// <summary>A breaker that tripped.</summary>
/// <param name="Amps">Through it.</param>
/// <param name="Seconds">From cold.</param>
public sealed record Trip(double Amps, double Seconds);
