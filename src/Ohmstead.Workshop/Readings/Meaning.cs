using System.Globalization;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>What a reading says by itself, before any fault is thought of. The screens, the papers and the command line say the same.</summary>
/// <param name="Words">"normal", "0.9 V low", "failed: at least 2.00 MΩ"; short enough for a line of a table.</param>
/// <param name="Next">What follows from a check that does not pass, in sentences; empty otherwise.</param>
public sealed record Meaning(Verdict Verdict, string Words, string Next = "")
{
    /// <summary>What was shown against what was to be expected, and against the limits where the reading is a check.</summary>
    /// <param name="error">Of the meter that it was taken with.</param>
    public static Meaning Of(Shown shown, ReadingSpec spec, Expectation expected, MeterError error) =>
        shown.Kind switch
        {
            ShownKind.NotTaken => new(Verdict.NotTaken, shown.Why.Length > 0 ? $"not taken: {shown.Why}" : "not taken"),
            ShownKind.Jumps when spec.Limits is not null => new(
                Verdict.Failed,
                "failed: it jumps",
                $"A joint, wire or contact is loose. {Locked(spec)}"
            ),
            ShownKind.Jumps => new(Verdict.Jumps, "jumps: a loose joint, wire or contact"),
            ShownKind.OverRange => OfValue(double.PositiveInfinity, spec, expected, error),
            _ => OfValue(shown.Value, spec, expected, error),
        };

    /// <summary>The same once a diagnosis doubts the value.</summary>
    /// <param name="why">Why it does (<c>UnitDoubts.Why</c>).</param>
    public static Meaning OfDoubted(string why, ReadingSpec spec) =>
        new(Verdict.Doubted, why, spec.Limits is null ? "Read it again." : "Read it again. It unlocks nothing until then.");

    /// <summary>The same for a reading of a readings file.</summary>
    public static Meaning Of(TakenReading taken, Expectation expected, MeterError error) =>
        Of(
            taken.Outcome switch
            {
                Outcome.OverRange => Shown.OverRange,
                Outcome.Jumps => Shown.Jumps(),
                Outcome.NotTaken => Shown.NotTaken(taken.Why),
                _ => Shown.Number(taken.Value),
            },
            taken.Spec,
            expected,
            error
        );

    private static Meaning OfValue(double value, ReadingSpec spec, Expectation expected, MeterError error)
    {
        var own = OfBand(value, expected);
        return spec.Limits is null
            ? own
            : CheckJudge.EndOf(spec, value, error) switch
            {
                CheckEnd.Failed => new(
                    Verdict.Failed,
                    $"failed: {LimitWords.Of(spec)}",
                    $"It fails {LimitWords.WithSource(spec)}. {Locked(spec)}"
                ),
                CheckEnd.TooClose => new(
                    Verdict.TooClose,
                    "too close for this meter",
                    $"It is too close to {LimitWords.WithSource(spec)}. Read it again, or use a better meter. It unlocks nothing."
                ),
                _ => Passed(value, spec, own),
            };
    }

    private static Meaning Passed(double value, ReadingSpec spec, Meaning own)
    {
        var usual = spec.Limits!.UsualMin;
        var isFair = own.Verdict is Verdict.Normal or Verdict.NotJudged;
        if (value >= usual)
            return own with { Words = isFair ? "passed" : $"passed, {own.Words}" };
        var least = ValueText.Of(usual, spec.Quantity);
        return new(
            isFair ? Verdict.AlittleOff : own.Verdict,
            own.Verdict == Verdict.Off ? $"passed, {own.Words}" : $"passed, under {least}",
            $"By the shop's limits a dry unit has more than {least}. Dry it slowly, then read it again."
        );
    }

    private static string Locked(ReadingSpec spec) =>
        spec.IsGate
            ? "Do not plug it in. Find the cause, repair it, then read this again."
            : "The readings that need it stay locked. Find the cause, repair it, then read this again.";

    private static Meaning OfBand(double value, Expectation expected)
    {
        var standing = expected.Judge(value);
        if (standing.Side == Side.NotJudged)
            return new(Verdict.NotJudged, "not judged: DC in the core");
        // Insulation is never too good.
        if (standing.Side == Side.Within || (standing.Side == Side.Above && expected.Quantity == Quantity.InsulationOhms))
            return new(Verdict.Normal, "normal");
        if (double.IsPositiveInfinity(value))
            return new(Verdict.Off, "OL: open");
        if (double.IsPositiveInfinity(expected.Low))
            return new(Verdict.Off, "should be OL");
        var side = standing.Side == Side.Below ? "low" : "high";
        // Of what spans decades a difference says nothing; how many times does.
        return standing switch
        {
            { IsClearlyOff: true } when expected.SpansDecades && standing.TimesOut > 0 => new(
                Verdict.Off,
                $"{Fold(standing.TimesOut)} times too {side}"
            ),
            { IsClearlyOff: true } => new(Verdict.Off, $"{ValueText.About(standing.Off, expected.Quantity)} {side}"),
            _ when expected.SpansDecades => new(Verdict.AlittleOff, $"a little {side}"),
            _ => new(Verdict.AlittleOff, $"a little {side}, by {ValueText.About(standing.Off, expected.Quantity)}"),
        };
    }

    /// <summary>"3.4", "12,000": two digits say how many times.</summary>
    private static string Fold(double times)
    {
        if (times < 9.95)
            return times.ToString("0.0", CultureInfo.InvariantCulture);
        var unit = Math.Pow(10, Math.Floor(Math.Log10(times)) - 1);
        return times > 1e12 ? "over a trillion" : (Math.Round(times / unit) * unit).ToString("#,0", CultureInfo.InvariantCulture);
    }
}

/// <summary>How a reading stands to what a sound unit shows.</summary>
public enum Verdict
{
    /// <summary>Within the band; a check has passed.</summary>
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

    /// <summary>A check whose value lies outside its limits.</summary>
    Failed,

    /// <summary>A check whose limit lies within the meter's error: it unlocks nothing.</summary>
    TooClose,

    /// <summary>It was probably noted or taken wrongly: nothing follows from it.</summary>
    Doubted,
}
