namespace Ohmstead.Simulator;

/// <summary>Seeded draws.</summary>
internal sealed class Dice(int seed)
{
    private readonly Random random = new(seed);

    public bool Chance(double probability) => random.NextDouble() < probability;

    public int Whole(int least, int most) => random.Next(least, most + 1);

    public double Between(double low, double high) => low + (high - low) * random.NextDouble();

    public double LogBetween(double low, double high) => low * Math.Pow(high / low, random.NextDouble());

    public T Pick<T>(IReadOnlyList<T> from) => from[random.Next(from.Count)];

    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>Log-normal with median 1 and this relative standard deviation.</summary>
    public double Factor(double relative) => Math.Exp(Math.Sqrt(Math.Log(1 + relative * relative)) * Normal());

    /// <summary>Between two bounds, evenly in the logarithm, to a few digits as a sheet would give it.</summary>
    public double Tidy(double low, double high, int digits = 3) => Tidy(LogBetween(low, high), digits);

    public static double Tidy(double value, int digits = 3) =>
        Fields.Parse(value.ToString("E" + (digits - 1).Text(), System.Globalization.CultureInfo.InvariantCulture));
}
