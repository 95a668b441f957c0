namespace Ohmstead.Simulator;

/// <summary>Newton steps for x = g(x) with slopes found by trying each direction once.</summary>
internal sealed class Slopes
{
    private readonly double[,] matrix;
    private readonly int size;

    /// <param name="images">Images of the point moved by <paramref name="step"/> in each direction.</param>
    public Slopes(double[] image, double[][] images, Func<int, double> step)
    {
        size = image.Length;
        matrix = new double[size, size];
        for (int j = 0; j < size; j++)
        for (int i = 0; i < size; i++)
            matrix[i, j] = (i == j ? 1 : 0) - (images[j][i] - image[i]) / step(j);
    }

    /// <summary>Solves (1 - slope) step = residual by elimination with pivots.</summary>
    public double[] Step(double[] residual)
    {
        double[,] a = (double[,])matrix.Clone();
        double[] x = (double[])residual.Clone();
        for (int k = 0; k < size; k++)
        {
            int pivot = Enumerable.Range(k, size - k).MaxBy(i => Math.Abs(a[i, k]));
            (x[k], x[pivot]) = (x[pivot], x[k]);
            for (int j = 0; j < size; j++)
                (a[k, j], a[pivot, j]) = (a[pivot, j], a[k, j]);
            for (int i = k + 1; i < size; i++)
            {
                double factor = a[i, k] / a[k, k];
                for (int j = k; j < size; j++)
                    a[i, j] -= factor * a[k, j];
                x[i] -= factor * x[k];
            }
        }
        for (int k = size - 1; k >= 0; k--)
        {
            for (int j = k + 1; j < size; j++)
                x[k] -= a[k, j] * x[j];
            x[k] /= a[k, k];
        }
        return x;
    }
}
