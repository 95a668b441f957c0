using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Likelihoods;

/// <summary>Scratch of <see cref="Gaussian.RobustLog"/>: the weighted residuals, and the precision once readings are dropped.</summary>
internal sealed class RobustWork
{
    private double[] precision = [];
    private double[] column = [];
    private int n;
    private bool isCopied;

    public double[] U { get; private set; } = [];

    public bool[] Dropped { get; private set; } = [];

    public void Reset(int size)
    {
        n = size;
        isCopied = false;
        if (U.Length < n)
            (U, Dropped, column) = (new double[n], new bool[n], new double[n]);
        Array.Clear(Dropped, 0, n);
    }

    /// <summary>Takes reading i out: precision and weighted residuals of the rest.</summary>
    public double[] Drop(double[] original, int i)
    {
        if (!isCopied)
        {
            if (precision.Length < n * n)
                precision = new double[n * n];
            Array.Copy(original, precision, n * n);
            isCopied = true;
        }
        var pivot = precision[(i * n) + i];
        Array.Copy(precision, i * n, column, 0, n);
        var share = U[i] / pivot;
        for (var j = 0; j < n; j++)
        {
            U[j] -= column[j] * share;
            if (column[j] != 0)
                Vectors.AddScaled(precision.AsSpan(j * n, n), column.AsSpan(0, n), -column[j] / pivot);
        }
        for (var j = 0; j < n; j++)
            precision[(i * n) + j] = precision[(j * n) + i] = 0;
        (U[i], Dropped[i], precision[(i * n) + i]) = (0, true, 0);
        return precision;
    }

    /// <summary>The precision of the readings that were not dropped.</summary>
    public double[] PrecisionOr(double[] original) => isCopied ? precision : original;
}
