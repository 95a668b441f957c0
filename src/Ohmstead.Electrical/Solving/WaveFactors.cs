using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// Real equations whose matrix has a positive definite symmetric part, factored L·U in place, four rows at a time. For such a matrix
/// elimination needs no exchange of rows (key golub-positive in docs/references.md).
/// </summary>
internal sealed class WaveFactors
{
    private const int Block = 4;

    private double[] m = [];
    private double[] inverse = [];
    private int size;
    private int wide;

    /// <summary>Begins a matrix of so many rows, all of them to be set.</summary>
    public void Begin(int rows)
    {
        (size, wide) = (rows, (rows + Block - 1) / Block * Block);
        if (m.Length < wide * wide)
            (m, inverse) = (new double[wide * wide], new double[wide]);
        for (var i = 0; i < wide; i++)
        {
            m.AsSpan((i * wide) + size, wide - size).Clear();
            if (i < size)
                continue;
            m.AsSpan(i * wide, wide).Clear();
            m[(i * wide) + i] = 1;
        }
    }

    /// <summary>A row of the matrix.</summary>
    public Span<double> Row(int i) => m.AsSpan(i * wide, size);

    /// <summary>Factors what was set.</summary>
    public void Factor()
    {
        for (var k = 0; k < wide; k += Block)
        {
            for (var p = k; p < k + Block; p++)
            {
                for (var q = k; q < p; q++)
                    Take(p, q, inverse[q]);
                inverse[p] = 1 / m[(p * wide) + p];
            }
            for (var i = k + Block; i < wide; i++)
                TakeBlock(i, k);
        }
    }

    /// <summary>Takes a pivot row from one of its block.</summary>
    private void Take(int row, int pivot, double inversePivot)
    {
        var by = m[(row * wide) + pivot] *= inversePivot;
        for (var j = pivot + 1; j < wide; j++)
            m[(row * wide) + j] -= by * m[(pivot * wide) + j];
    }

    /// <summary>Takes the four rows of a block from a row below it.</summary>
    private void TakeBlock(int row, int k)
    {
        var own = m.AsSpan(row * wide, wide);
        var (a, b, c, d) = (k * wide, (k + 1) * wide, (k + 2) * wide, (k + 3) * wide);
        var f0 = own[k] * inverse[k];
        var f1 = (own[k + 1] - (f0 * m[a + k + 1])) * inverse[k + 1];
        var f2 = (own[k + 2] - (f0 * m[a + k + 2]) - (f1 * m[b + k + 2])) * inverse[k + 2];
        var f3 = (own[k + 3] - (f0 * m[a + k + 3]) - (f1 * m[b + k + 3]) - (f2 * m[c + k + 3])) * inverse[k + 3];
        (own[k], own[k + 1], own[k + 2], own[k + 3]) = (f0, f1, f2, f3);
        var (by0, by1, by2, by3) = (Vector256.Create(f0), Vector256.Create(f1), Vector256.Create(f2), Vector256.Create(f3));
        var (rest, from) = (wide - k - Block, k + Block);
        var into = Vectors(own.Slice(from, rest));
        var row0 = Vectors(m.AsSpan(a + from, rest));
        var row1 = Vectors(m.AsSpan(b + from, rest));
        var row2 = Vectors(m.AsSpan(c + from, rest));
        var row3 = Vectors(m.AsSpan(d + from, rest));
        for (var n = 0; n < into.Length && n < row0.Length && n < row1.Length && n < row2.Length && n < row3.Length; n++)
            into[n] -= (by0 * row0[n]) + (by1 * row1[n]) + ((by2 * row2[n]) + (by3 * row3[n]));
    }

    /// <summary>Solves in place.</summary>
    public void Solve(Span<double> x)
    {
        for (var i = 1; i < size; i++)
            x[i] -= Dot(m.AsSpan(i * wide, i), x);
        for (var i = size - 1; i >= 0; i--)
            x[i] = (x[i] - Dot(m.AsSpan((i * wide) + i + 1, size - i - 1), x[(i + 1)..])) * inverse[i];
    }

    private static double Dot(Span<double> a, Span<double> b)
    {
        var va = Vectors(a);
        var vb = Vectors(b);
        var sum = Vector256<double>.Zero;
        for (var n = 0; n < va.Length && n < vb.Length; n++)
            sum += va[n] * vb[n];
        var total = Vector256.Sum(sum);
        for (var n = va.Length * Block; n < a.Length; n++)
            total += a[n] * b[n];
        return total;
    }

    private static Span<Vector256<double>> Vectors(Span<double> values) => MemoryMarshal.Cast<double, Vector256<double>>(values);
}
