using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Workshop.Listening;

/// <summary>
/// Spectra of one unit laid over one another: each over the noise of its own room, for a phone's gain is not known. Across 0 to 800 Hz,
/// up 0 to 70 dB.
/// </summary>
/// <param name="Curves">One for each recording, in their order.</param>
/// <param name="Lines">Where the lines of the supply are; none where no hum is above the noise.</param>
public sealed record HumPlot(ImmutableArray<HumCurve> Curves, ImmutableArray<HumTick> Lines)
{
    /// <summary>How far it reaches [Hz].</summary>
    public const double MostHertz = 800;

    /// <summary>How far up it reaches [dB].</summary>
    public const double MostDb = 70;

    /// <summary>Its width, in its own units: one for each hertz.</summary>
    public const double Width = MostHertz;

    /// <summary>Its height, in its own units.</summary>
    public const double Height = 280;

    /// <summary>Stretches of 2 Hz.</summary>
    private const int Points = 400;

    /// <summary>Lines that are named under the picture.</summary>
    private static readonly int[] Named = [1, 2, 4, 6, 8, 10, 12];

    /// <summary>Draws recordings, each with its label.</summary>
    public static HumPlot Of(ImmutableArray<(string Label, HumRecording Recording)> recordings) =>
        new(
            [.. recordings.Select(r => new HumCurve(r.Label, Path(r.Recording.Curve(Points))))],
            recordings.Select(r => r.Recording.FoundHertz).FirstOrDefault(f => f is not null) is { } supply
                ? [.. Named.Where(k => k * supply < MostHertz).Select(k => new HumTick(k * supply, Tick(k * supply)))]
                : []
        );

    private static string Path(double[] levels)
    {
        // The middle of all stretches is noise: lines are few.
        var noise = levels.Order().ElementAt(levels.Length / 2);
        var places = levels.Select(
            (db, n) =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(n + 0.5) * Width / levels.Length:0.#} {Height * (1 - (Math.Clamp(db - noise, 0, MostDb) / MostDb)):0.#}"
                )
        );
        return $"M{string.Join('L', places)}";
    }

    private static string Tick(double hertz) => hertz.ToString("0", CultureInfo.InvariantCulture);
}

/// <summary>A recording as a curve.</summary>
/// <param name="Label">What it is of.</param>
/// <param name="Path">Its places, as an SVG path.</param>
public sealed record HumCurve(string Label, string Path);

/// <summary>A line of the supply on the scale.</summary>
/// <param name="Hertz">Where.</param>
/// <param name="Words">The same, in whole hertz.</param>
public sealed record HumTick(double Hertz, string Words);
