using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>What a reading says by itself, before any fault is thought of.</summary>
/// <param name="Words">"normal", "0.9 V low", "OL, expected 3.1–4.2 Ω".</param>
public sealed record Meaning(Verdict Verdict, string Words)
{
    /// <summary>What was shown against what was to be expected.</summary>
    public static Meaning Of(Shown shown, Expectation expected) =>
        shown.Kind switch
        {
            ShownKind.NotTaken => new(Verdict.NotTaken, shown.Why.Length > 0 ? $"not taken: {shown.Why}" : "not taken"),
            ShownKind.Jumps => new(Verdict.Jumps, "comes and goes when moved: a bad joint, wire or contact"),
            _ when !expected.CanJudge => new(Verdict.NotJudged, "not judged: a rectifier loads the core here"),
            ShownKind.OverRange when double.IsPositiveInfinity(expected.High) => new(Verdict.Normal, "normal"),
            ShownKind.OverRange => new(Verdict.Off, $"OL: open, expected {expected.Band}"),
            _ => OfNumber(shown.Value, expected),
        };

    private static Meaning OfNumber(double value, Expectation expected)
    {
        var standing = expected.Judge(value);
        if (standing.Side == Side.Within)
            return new(Verdict.Normal, "normal");
        if (double.IsPositiveInfinity(expected.Low))
            return new(Verdict.Off, "there is a path where none should be");
        if (double.IsPositiveInfinity(expected.High))
            return new(
                Verdict.Off,
                $"{Fold(expected.Low, value)} low, expected at least {ValueText.Of(expected.Low, expected.Quantity)}"
            );
        var side = standing.Side == Side.Below ? "low" : "high";
        // Of an insulation that spans decades a difference says nothing; how many times does.
        var off =
            expected.Quantity == Quantity.InsulationOhms
                ? Fold(expected.Value, value)
                : ValueText.Of(standing.Off, expected.Quantity);
        return standing.IsClearlyOff
            ? new(Verdict.Off, $"{off} {side}")
            : new(Verdict.AlittleOff, $"a little {side}, by {off}");
    }

    private static string Fold(double expected, double value) =>
        $"{ValueText.Number(value < expected ? expected / Math.Max(value, 1e-9) : value / expected)} times too";
}

/// <summary>How a reading stands to what a sound unit shows.</summary>
public enum Verdict
{
    /// <summary>Within the band.</summary>
    Normal,

    /// <summary>Outside the band by little; one sound unit in twenty does that.</summary>
    AlittleOff,

    /// <summary>Well outside the band.</summary>
    Off,

    /// <summary>It came and went.</summary>
    Jumps,

    /// <summary>It could not be taken.</summary>
    NotTaken,

    /// <summary>Nothing can be concluded from it.</summary>
    NotJudged,
}
