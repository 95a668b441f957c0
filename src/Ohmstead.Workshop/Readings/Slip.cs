using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>
/// A value that looks like a slip of the hand: a decimal point off or a stray minus sign puts it where a sound unit is. It is
/// asked about, never changed: the person who saw the meter says which it was.
/// </summary>
/// <param name="Words">"ten times too high", "minus sign".</param>
/// <param name="Meant">What was probably meant.</param>
public sealed record Slip(string Words, Shown Meant)
{
    /// <summary>Slips of the point or the prefix, the likeliest first: what was typed is so many times what was meant.</summary>
    private static readonly (double Times, string Words)[] Decimals =
    [
        (10, "ten times too high"),
        (0.1, "ten times too low"),
        (100, "a hundred times too high"),
        (0.01, "a hundred times too low"),
        (1000, "a thousand times too high"),
        (0.001, "a thousand times too low"),
    ];

    /// <summary>What slip a typed value looks like; null when it looks like none.</summary>
    /// <param name="typed">As typed.</param>
    /// <param name="expected">What a meter shows on sound units.</param>
    public static Slip? Of(Shown typed, Expectation expected)
    {
        if (typed.Kind != ShownKind.Value || double.IsInfinity(expected.High) || !expected.Judge(typed.Value).IsClearlyOff)
            return null;
        if (typed.Value < 0 && (expected.Quantity == Quantity.Ohms || expected.Holds(-typed.Value)))
            return new("minus sign", Shown.Number(-typed.Value));
        // Insulation fails by a thousand times as well: nobody is led from a failure to a pass by one key.
        if (expected.SpansDecades)
            return null;
        foreach (var (times, words) in Decimals)
            if (Shifted(typed.Value, times) is var meant && expected.Holds(meant))
                return new(words, Shown.Number(meant));
        return null;
    }

    /// <summary>The question: "Did you mean 3.5 Ω?"</summary>
    public string Question(Quantity quantity) => $"Did you mean {ShownText.Write(Meant, quantity)}?";

    /// <summary>By decimal arithmetic: a tenth of 35 is 3.5, with no digit more.</summary>
    private static double Shifted(double typed, double times) =>
        (double)((decimal)typed / (decimal)times);
}
