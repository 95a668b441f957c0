namespace Ohmstead.Workshop.Listening;

/// <summary>One line of the hum.</summary>
/// <param name="Harmonic">Of the supply: 2 is twice its frequency.</param>
/// <param name="Hertz">Where.</param>
/// <param name="LevelDb">Of a sine of full scale.</param>
/// <param name="AboveFloorDb">Over the noise in 1 Hz beside it.</param>
public sealed record HumLine(int Harmonic, double Hertz, double LevelDb, double AboveFloorDb)
{
    private const double LeastDb = 14;

    /// <summary>Far enough above the noise to be a line.</summary>
    internal bool IsThere => AboveFloorDb >= LeastDb;

    /// <summary>The noise in 1 Hz beside it.</summary>
    internal double FloorDb => LevelDb - AboveFloorDb;
}
