using System.Numerics;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// What remains of a circuit at one frequency after elimination: equations over the kept nodes (rows 0…) and the cores
/// (after them, in volts per turn), the column of the driven node, and the driven node's own admittance. Lamps, junctions,
/// loss and excitation are not in it yet.
/// </summary>
internal sealed class Frame
{
    public Complex[] Matrix = new Complex[64];
    public Complex[] Drive = new Complex[8];
    public Complex DriveSelf;

    /// <summary>Number of rows.</summary>
    public int Size;

    public void Clear(int size)
    {
        Size = size;
        if (Matrix.Length < size * size)
            Matrix = new Complex[size * size];
        if (Drive.Length < size)
            Drive = new Complex[size];
        Array.Clear(Matrix, 0, size * size);
        Array.Clear(Drive, 0, size);
        DriveSelf = Complex.Zero;
    }
}
