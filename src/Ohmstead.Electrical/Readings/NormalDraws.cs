namespace Ohmstead.Electrical.Readings;

/// <summary>
/// Evenly drawn numbers for parameters and sizes: a column takes the middle of each of <see cref="Count"/> equal strata once,
/// in a shuffled order (a Latin hypercube; key mckay). All columns are one shuffled column, each begun at another place, so
/// that a table of any number of columns costs nothing. The same in every run.
/// </summary>
internal static class NormalDraws
{
    /// <summary>Draws in a column: a 2.5 % quantile is met to a fiftieth of a standard deviation or so.</summary>
    public const int Count = 8192;

    private const int Seed = 95;
    private static readonly int[] Order = Shuffled();
    private static readonly double[] Normals = Twice(InOrder());
    private static readonly double[] Shares = Twice([.. Enumerable.Range(0, Count).Select(Share)]);

    /// <summary>Standard normal draws of a parameter.</summary>
    public static ReadOnlySpan<double> OfParameter(int parameter) => Normals.AsSpan(Order[parameter % (Count / 2)], Count);

    /// <summary>Draws of a size, uniform on 0..1.</summary>
    public static ReadOnlySpan<double> OfSize(int fault) => Shares.AsSpan(Order[Count - 1 - (fault % (Count / 2))], Count);

    private static double Share(int stratum) => (stratum + 0.5) / Count;

    private static int[] Shuffled()
    {
        int[] order = [.. Enumerable.Range(0, Count)];
        new Random(Seed).Shuffle(order);
        return order;
    }

    private static double[] InOrder()
    {
        var normals = new double[Count];
        var z = 0.0;
        for (var n = Count / 2; n < Count; n++)
        {
            z = NormalLaw.At(Share(n), z);
            (normals[n], normals[Count - 1 - n]) = (z, -z);
        }
        return normals;
    }

    /// <summary>The column shuffled, and once more behind it: any place is the start of a whole column.</summary>
    private static double[] Twice(double[] inOrder) => [.. Order.Concat(Order).Select(n => inOrder[n])];
}
