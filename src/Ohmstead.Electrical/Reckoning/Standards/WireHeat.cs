namespace Ohmstead.Electrical.Reckoning.Standards;

/// <summary>
/// How long a wire bears a current while no heat leaves it: I²t = (k·S)² (key iec-60949), and the amps that melt it. Past a few seconds
/// heat leaves a wire, and it bears more.
/// </summary>
public static class WireHeat
{
    /// <summary>Copper melts here [°C].</summary>
    private const double MeltsCelsius = 1083;

    /// <summary>Square millimetres of a circular mil: π/4·(0.0254 mm)².</summary>
    private const double CircularMil = Math.PI / 4 * 0.0254 * 0.0254;

    /// <summary>k from the temperatures at which it begins and may end: 226·√ln((θf + 234.5)/(θi + 234.5)) of copper, 148 and 228 of aluminum.</summary>
    /// <param name="isCopper">Else aluminum.</param>
    /// <param name="startCelsius">At first.</param>
    /// <param name="endCelsius">At the most; above the first.</param>
    /// <returns>k [A·√s/mm²].</returns>
    public static double K(bool isCopper, double startCelsius, double endCelsius)
    {
        var (factor, zero) = isCopper ? (226.0, 234.5) : (148.0, 228.0);
        return factor * Math.Sqrt(Math.Log((endCelsius + zero) / (startCelsius + zero)));
    }

    /// <summary>The thinnest conductor that bears a current for so long: I·√t/k [mm²].</summary>
    public static double LeastSquare(double amps, double seconds, double k) => amps * Math.Sqrt(seconds) / k;

    /// <summary>How long a conductor bears a current: (k·S/I)² [s].</summary>
    public static double Seconds(double squareMillimetres, double amps, double k) => Math.Pow(k * squareMillimetres / amps, 2);

    /// <summary>
    /// Seconds until copper melts, by Onderdonk (key onderdonk): 33·(I/A)²·t = log₁₀((1083 − Ta)/(234 + Ta) + 1), A in circular mils. The
    /// term is 234 plus the surroundings; a page that takes it off is wrong by 5 % of the amps.
    /// </summary>
    public static double MeltSeconds(double squareMillimetres, double amps, double aroundCelsius) =>
        MeltTerm(aroundCelsius) * Math.Pow(squareMillimetres / CircularMil / amps, 2) / 33;

    /// <summary>Amps that melt copper in so many seconds, by the same.</summary>
    public static double MeltAmps(double squareMillimetres, double seconds, double aroundCelsius) =>
        squareMillimetres / CircularMil * Math.Sqrt(MeltTerm(aroundCelsius) / (33 * seconds));

    /// <summary>Amps that melt a bare copper wire in open air sooner or later, by Preece: 10244·d^1.5, d in inches (key preece).</summary>
    public static double FusingAmps(double squareMillimetres) => 10244 * Math.Pow(Math.Sqrt(4 * squareMillimetres / Math.PI) / 25.4, 1.5);

    private static double MeltTerm(double aroundCelsius) => Math.Log10(((MeltsCelsius - aroundCelsius) / (234 + aroundCelsius)) + 1);
}
