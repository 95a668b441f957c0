using System.Collections.Immutable;
using System.Text.Json;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary><c>verdict</c>: a limit, a reading, and the meter's error (docs/methods/proving.md).</summary>
/// <param name="Limit">What it is held against.</param>
/// <param name="Values">One reading, or several of the same; of touch current the greater, in mA. Empty for OL.</param>
/// <param name="Error">The error of their mean.</param>
/// <param name="Guard">Guard band as a multiple of the expanded uncertainty.</param>
/// <param name="OverRangeAbove">Where the meter shows OL; null unless it did.</param>
/// <param name="Touch">The readings across a touch-current network; null for any other test.</param>
public sealed record Verdict(
    TestLimit Limit,
    ImmutableArray<double> Values,
    MeanError Error,
    double Guard,
    double? OverRangeAbove,
    TouchReading? Touch
) : Question
{
    private static readonly string[] Words = ["pass", "close-pass", "close-fail", "fail"];

    /// <summary>Reads its fields.</summary>
    public static Verdict Read(QuestionFields fields)
    {
        var limit = TestLimit.Read(fields);
        var touch = TouchReading.Read(fields);
        if (touch is not null && fields.Has("values"))
            fields.Report("touch", "is given beside values", "give one of them");
        var isOver = touch is null && IsOverRange(fields);
        double? over = isOver
            ? fields.Number("overRangeAbove", NumberRange.NotNegative)
            : fields.Optional("overRangeAbove", NumberRange.NotNegative);
        var values =
            touch is not null ? [touch.Volts.Max() * touch.MilliampsPerVolt]
            : isOver ? []
            : fields.Numbers("values", NumberRange.Any, least: 1);
        var error = MeanError.Read(fields, values, isOver, touch?.MilliampsPerVolt ?? 1);
        return new(limit, values, error, fields.Number("guard", NumberRange.NotNegative, 1), isOver ? over : null, touch);
    }

    private static bool IsOverRange(QuestionFields fields) =>
        fields.Has("values")
        && fields.Places("values") is [{ Element: { ValueKind: JsonValueKind.String } text }]
        && text.GetString() == "OL";

    /// <inheritdoc/>
    public override VerdictAnswer Answer()
    {
        if (OverRangeAbove is { } above)
            return OverRange(above);
        var (value, law) = (Values.Average(), Error.Law);
        var (u, w) = (law.StandardUncertainty, Guard * 2 * law.StandardUncertainty);
        var (from, to) = (Limit.Min + w, Limit.Max - w);
        var worst = Math.Max(Limit.Min is { } min ? Place(value - min, w) : 0, Limit.Max is { } max ? Place(max - value, w) : 0);
        var outside = (Limit.Min is { } least ? law.Below(least - value) : 0) + (Limit.Max is { } most ? law.Below(value - most) : 0);
        var isJudged = Touch is not { EarthProved: false };
        return new(
            value,
            u,
            2 * u,
            from,
            to,
            from is null || to is null || from <= to,
            isJudged ? Words[worst] : VerdictAnswer.NotJudged,
            100 * Math.Min(1, outside),
            100 * law.Below(-w),
            Limit
        )
        {
            Milliamps = Touch is { } touch ? [.. touch.Volts.Select(v => v * touch.MilliampsPerVolt)] : null,
            Nanofarads = Touch?.Nanofarads(value),
            NetworkOhms = Touch?.NetworkOhms,
            Words = isJudged
                ?
                [
                    .. VerdictWords.Of(Words[worst], Limit, Math.Min(1, outside)),
                    .. Touch is { } read ? VerdictWords.OfTouch(Words[worst], read, value) : ImmutableArray<string>.Empty,
                ]
                : ["Not judged: prove the earth first, then read again."],
            Cautions = Touch is null ? [] : VerdictWords.TouchCautions,
            Outside = [TestRecord.NoCertification],
        };
    }

    /// <summary>0 inside by the guard band or more, 1 inside, 2 outside by no more than it, 3 farther out (key ilac-g8).</summary>
    private static int Place(double inside, double guard) =>
        inside >= guard ? 0
        : inside >= 0 ? 1
        : -inside <= guard ? 2
        : 3;

    private VerdictAnswer OverRange(double above)
    {
        var word = Limit.Max is { } max
            ? above >= max
                ? "fail"
                : VerdictAnswer.NotJudged
            : above >= Limit.Min
                ? "pass"
                : VerdictAnswer.NotJudged;
        return new("OL", null, null, null, null, null, word, null, null, Limit)
        {
            Words =
                word == VerdictAnswer.NotJudged
                    ? ["Not judged: the meter’s range ends short of the limit."]
                    : VerdictWords.Of(word, Limit, null),
            Outside = [TestRecord.NoCertification],
        };
    }
}

/// <summary>What <c>verdict</c> answers.</summary>
/// <param name="Value">The mean; of touch current the greater, in mA; or OL.</param>
/// <param name="StandardUncertainty">u of the value.</param>
/// <param name="ExpandedUncertainty">U = 2u.</param>
/// <param name="AcceptFrom">From here it passes; null without a least.</param>
/// <param name="AcceptTo">Up to here it passes; null without a most.</param>
/// <param name="MeterFineEnough">Something is left between the two.</param>
/// <param name="Verdict">pass, close-pass, close-fail, fail, or not judged.</param>
/// <param name="ChanceOutsidePercent">That the true value is outside, given the reading.</param>
/// <param name="FalseAcceptAtLimitPercent">That a value just at the limit would pass.</param>
/// <param name="Limit">The limit, to be printed with the verdict.</param>
public sealed record VerdictAnswer(
    object Value,
    double? StandardUncertainty,
    double? ExpandedUncertainty,
    double? AcceptFrom,
    double? AcceptTo,
    bool? MeterFineEnough,
    string Verdict,
    double? ChanceOutsidePercent,
    double? FalseAcceptAtLimitPercent,
    TestLimit Limit
) : Answer
{
    /// <summary>The word for what says nothing for or against.</summary>
    public const string NotJudged = "not judged";

    /// <summary>Of touch current both ways round; left out of every other answer.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<double>? Milliamps { get; init; }

    /// <summary>The capacitor from the line that would let this much touch current through; left out where something joins it to the line.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public double? Nanofarads { get; init; }

    /// <summary>Ohms of the touch-current network at its frequency.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public double? NetworkOhms { get; init; }
}
