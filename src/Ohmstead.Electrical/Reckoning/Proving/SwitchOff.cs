using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>
/// Ohms at switch-off from three readings of a winding that cools, at equal steps: the falls of an exponential keep one ratio q, so
/// R∞ = R3 − (R2 − R3)·q/(1 − q), and R(0) = R∞ + (R1 − R∞)·q^(−t1/step). Derived in a test.
/// </summary>
/// <param name="Ohms">At the moment of switching off.</param>
/// <param name="EndOhms">To which it cools.</param>
/// <param name="Ratio">q: of one fall to the one before it.</param>
internal sealed record SwitchOff(double Ohms, double EndOhms, double Ratio)
{
    /// <summary>Steps are the same within this share.</summary>
    private const double SameStep = 0.1;

    /// <summary>Copper that has cooled before the first reading had not twice its ohms: that were 250 °C more (234.5 and 20).</summary>
    private const double MostTimes = 2;

    /// <summary>From the three readings; null where they do not fall as a cooling winding does.</summary>
    public static SwitchOff? Of(ImmutableArray<CoolingReading> read)
    {
        var (first, second) = (read[0].Ohms - read[1].Ohms, read[1].Ohms - read[2].Ohms);
        if (first <= 0 || second <= 0 || second >= first)
            return null;
        var q = second / first;
        var end = read[2].Ohms - (second * q / (1 - q));
        return new(end + ((read[0].Ohms - end) * Math.Pow(q, -read[0].Seconds / (read[1].Seconds - read[0].Seconds))), end, q);
    }

    /// <summary>Reads the field <c>after</c>; null with a problem.</summary>
    public static SwitchOff? Read(QuestionFields fields)
    {
        var read = fields.List(
            "after",
            a => new CoolingReading(a.Number("seconds", NumberRange.Positive), a.Number("ohms", NumberRange.Positive)),
            least: 3,
            most: 3
        );
        if (read.Length != 3 || !fields.IsSoundAt("after"))
            return null;
        var (one, two) = (read[1].Seconds - read[0].Seconds, read[2].Seconds - read[1].Seconds);
        if (one <= 0 || Math.Abs(two - one) > SameStep * one)
            fields.Report("after", "are not at equal steps", "three readings, as at 30, 60 and 90 s");
        else if (Of(read) is { } found)
        {
            if (found.Ohms <= MostTimes * read[0].Ohms)
                return found;
            fields.Report(
                "after",
                FormattableString.Invariant($"carried back make {found.Ohms:G3} Ω, more than twice the first"),
                "read sooner after switch-off, at shorter steps"
            );
        }
        else
            fields.Report("after", "do not fall slower and slower", "read the same winding while it cools, with the same leads");
        return null;
    }
}
