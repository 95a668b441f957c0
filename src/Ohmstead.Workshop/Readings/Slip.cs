using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;

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

    /// <summary>So many times what a sound unit shows no output gives. Common practice, no source.</summary>
    private const double TimesBeyond = 3;

    /// <summary>Where a sound unit shows next to nothing, a fault may well show volts [V].</summary>
    private const double LeastVolts = 3;

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
        return Beyond(typed.Value, expected);
    }

    /// <summary>
    /// No fault gives an output several times its volts: 148 V at a post of 18 V is 14.8, though that is low too.
    /// </summary>
    private static Slip? Beyond(double typed, Expectation expected)
    {
        if (
            expected.Quantity is not (Quantity.AcVolts or Quantity.DcVolts)
            || expected.High < LeastVolts
            || typed < TimesBeyond * expected.High
        )
            return null;
        foreach (var (times, words) in Decimals)
            if (times > 1 && Shifted(typed, times) is var meant && meant <= expected.High && meant >= expected.Low / TimesBeyond)
                return new(words, Shown.Number(meant));
        return null;
    }

    /// <summary>
    /// What a diagnosis takes a value for, where one tap puts it right; null where only reading it again does. A check is read again:
    /// nothing unlocks mains by a correction from memory.
    /// </summary>
    public static Slip? Of(ProbableSlip found, TakenReading read)
    {
        if (read is not { Outcome: Outcome.Value, Spec.Limits: null })
            return null;
        Slip Times(double times) => new(Decimals.First(d => d.Times == times).Words, Shown.Number(Shifted(read.Value, times)));
        return found.Kind switch
        {
            SlipKind.TimesTen => Times(10),
            SlipKind.Tenth => Times(0.1),
            SlipKind.TimesThousand => Times(1000),
            SlipKind.Thousandth => Times(0.001),
            SlipKind.Sign => new("minus sign", Shown.Number(-read.Value)),
            _ => null,
        };
    }

    /// <summary>The question: "Did you mean 3.5 Ω?"</summary>
    public string Question(Quantity quantity) => $"Did you mean {ShownText.Write(Meant, quantity)}?";

    /// <summary>By decimal arithmetic: a tenth of 35 is 3.5, with no digit more.</summary>
    private static double Shifted(double typed, double times) => (double)((decimal)typed / (decimal)times);
}
