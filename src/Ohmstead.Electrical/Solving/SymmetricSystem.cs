using System.Numerics;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// A small dense complex symmetric system, factored L·D·Lᵀ in place without pivoting. Passive networks give matrices whose
/// real part is positive and whose imaginary part has one sign; for these elimination without pivoting is stable
/// (growth below 3: key Higham-accretive in docs/references.md).
/// </summary>
internal sealed class SymmetricSystem
{
    private Complex[] m = new Complex[64];
    private Complex[] inverse = new Complex[8];

    public int Size { get; private set; }

    /// <summary>Begins with a copy of <paramref name="matrix"/>, row by row.</summary>
    public void Load(ReadOnlySpan<Complex> matrix, int size)
    {
        Size = size;
        if (m.Length < size * size)
            (m, inverse) = (new Complex[size * size], new Complex[size]);
        if (inverse.Length < size)
            inverse = new Complex[size];
        matrix[..(size * size)].CopyTo(m);
    }

    /// <summary>Adds an admittance [S] between two rows; a row below 0 is held from outside.</summary>
    public void Add(int rowA, int rowB, Complex admittance)
    {
        if (rowA >= 0)
            m[(rowA * Size) + rowA] += admittance;
        if (rowB >= 0)
            m[(rowB * Size) + rowB] += admittance;
        if (rowA < 0 || rowB < 0)
            return;
        m[(rowA * Size) + rowB] -= admittance;
        m[(rowB * Size) + rowA] -= admittance;
    }

    /// <summary>Factors. A row without any admittance is left at zero.</summary>
    public void Factor()
    {
        for (var k = 0; k < Size; k++)
        {
            var row = m.AsSpan(k * Size, Size);
            var d = row[k];
            inverse[k] = d == Complex.Zero ? Complex.Zero : Reciprocal(d);
            for (var i = k + 1; i < Size; i++)
            {
                if (row[i] == Complex.Zero)
                    continue;
                var l = row[i] * inverse[k];
                var target = m.AsSpan(i * Size, Size);
                for (var j = i; j < Size; j++)
                    target[j] -= l * row[j];
            }
        }
    }

    /// <summary>Solves in place with the last factors; only the upper triangle is used.</summary>
    public void Solve(Span<Complex> x)
    {
        for (var k = 0; k < Size; k++)
        {
            if (x[k] == Complex.Zero)
                continue;
            var f = x[k] * inverse[k];
            var row = m.AsSpan(k * Size, Size);
            for (var i = k + 1; i < Size; i++)
                x[i] -= f * row[i];
        }
        for (var k = Size - 1; k >= 0; k--)
        {
            var row = m.AsSpan(k * Size, Size);
            var sum = x[k];
            for (var i = k + 1; i < Size; i++)
                sum -= row[i] * x[i];
            x[k] = sum * inverse[k];
        }
    }

    /// <summary>1/z.</summary>
    public static Complex Reciprocal(Complex z)
    {
        var scale = 1 / ((z.Real * z.Real) + (z.Imaginary * z.Imaginary));
        return new Complex(z.Real * scale, -z.Imaginary * scale);
    }
}
