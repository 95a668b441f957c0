using System.Globalization;

namespace Ohmstead.Electrical.Reckoning;

/// <summary>Which numbers a field of a question may hold, and how that is said.</summary>
/// <param name="Low">The least.</param>
/// <param name="High">The greatest.</param>
/// <param name="WithoutLow">The least itself is out of it.</param>
/// <param name="WithoutHigh">The greatest itself is out of it.</param>
public sealed record NumberRange(double Low, double High, bool WithoutLow = false, bool WithoutHigh = false)
{
    /// <summary>Beyond this no figure of a bench lies, and sums of squares still hold.</summary>
    public const double Most = 1e15;

    /// <summary>Above 0, but below this, nothing is divided by.</summary>
    private const double Least = 1e-30;

    /// <summary>Any number.</summary>
    public static NumberRange Any { get; } = new(-Most, Most);

    /// <summary>Above 0: what is divided by, or asked about.</summary>
    public static NumberRange Positive { get; } = new(0, Most, WithoutLow: true);

    /// <summary>0 or more: a length, a resistance, a price.</summary>
    public static NumberRange NotNegative { get; } = new(0, Most);

    /// <summary>0 to 100.</summary>
    public static NumberRange Percent { get; } = new(0, 100);

    /// <summary>A price, a fee, a rate.</summary>
    public static NumberRange Money { get; } = new(0, 1e9);

    /// <summary>A temperature at which metals still follow their law of resistance.</summary>
    public static NumberRange Celsius { get; } = new(-200, 2000);

    /// <summary>This least number and above.</summary>
    public static NumberRange AtLeast(double low) => new(low, Most);

    /// <summary>Whether a number is in it.</summary>
    public bool Holds(double value) =>
        (WithoutLow ? value > Low && (Low != 0 || value >= Least) : value >= Low) && (WithoutHigh ? value < High : value <= High);

    /// <summary>In words: <c>a number above 0</c>.</summary>
    public string Words
    {
        get
        {
            if (this == Any)
                return "a number";
            var low =
                WithoutLow ? $"above {Said(Low)}"
                : High >= Most ? $"{Said(Low)} or more"
                : $"from {Said(Low)}";
            return High >= Most ? $"a number, {low}" : $"a number {low} {(WithoutHigh ? "and below" : "to")} {Said(High)}";
        }
    }

    /// <summary>Some number in it, to read on with after a problem.</summary>
    internal double Harmless =>
        Holds(1) ? 1
        : Holds((Low + High) / 2) ? (Low + High) / 2
        : Low;

    private static string Said(double value) =>
        value.ToString(value == 0 || Math.Abs(value) is >= 1e-4 and < 1e10 ? "0.####" : "G6", CultureInfo.InvariantCulture);
}
