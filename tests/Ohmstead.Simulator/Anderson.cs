namespace Ohmstead.Simulator;

/// <summary>Anderson acceleration of x = g(x): least squares over the last few steps, most recent first.</summary>
internal sealed class Anderson(int depth)
{
    private readonly List<(double[] Image, double[] Residual)> past = [];

    /// <summary>The next point to try, from a point and its image.</summary>
    public double[] Next(double[] at, double[] image)
    {
        double[] residual = [.. image.Zip(at, (g, x) => g - x)];
        past.Insert(0, (image, residual));
        if (past.Count > depth + 1)
            past.RemoveAt(past.Count - 1);
        int m = past.Count - 1;
        double[] next = [.. image];
        if (m == 0)
            return next;
        double[][] columns = [.. Enumerable.Range(1, m).Select(k => Difference(past[0].Residual, past[k].Residual))];
        double[] weights = LeastSquares(columns, residual);
        for (int k = 0; k < m; k++)
        for (int n = 0; n < next.Length; n++)
            next[n] -= weights[k] * (past[0].Image[n] - past[k + 1].Image[n]);
        return next;
    }

    private static double[] Difference(double[] one, double[] other) => [.. one.Zip(other, (a, b) => a - b)];

    /// <summary>Modified Gram-Schmidt; a column that adds nothing gets weight 0.</summary>
    private static double[] LeastSquares(double[][] columns, double[] target)
    {
        int m = columns.Length;
        double[][] basis = [.. columns.Select(column => (double[])column.Clone())];
        double[,] upper = new double[m, m];
        double[] weights = new double[m];
        double[] projected = new double[m];
        for (int j = 0; j < m; j++)
        {
            double before = Norm(basis[j]);
            for (int i = 0; i < j; i++)
            {
                upper[i, j] = Dot(basis[i], basis[j]);
                for (int n = 0; n < target.Length; n++)
                    basis[j][n] -= upper[i, j] * basis[i][n];
            }
            double left = Norm(basis[j]);
            if (left <= 1e-9 * before || left == 0)
            {
                Array.Clear(basis[j]);
                continue;
            }
            upper[j, j] = left;
            for (int n = 0; n < target.Length; n++)
                basis[j][n] /= left;
            projected[j] = Dot(basis[j], target);
        }
        for (int j = m - 1; j >= 0; j--)
        {
            if (upper[j, j] == 0)
                continue;
            double sum = projected[j];
            for (int k = j + 1; k < m; k++)
                sum -= upper[j, k] * weights[k];
            weights[j] = sum / upper[j, j];
        }
        return weights;
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();

    private static double Norm(double[] a) => Math.Sqrt(Dot(a, a));
}
