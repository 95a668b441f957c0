using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary><c>meter-shows</c>: what each sort of meter shows of volts that are not a sine (docs/methods/proving.md).</summary>
/// <param name="Wave">Its form.</param>
/// <param name="DutyPercent">Of a pulse: how much of the time it is on.</param>
/// <param name="RmsVolts">Of all of it, DC in it.</param>
public sealed record MeterShows(string Wave, double DutyPercent, double RmsVolts) : Question
{
    /// <summary>Reads its fields.</summary>
    public static MeterShows Read(QuestionFields fields)
    {
        var (wave, duty) = (fields.OneOf("wave", MeterWave.Waves), fields.Number("dutyPercent", new NumberRange(0.1, 100), 50));
        var dc = MeterWave.Of(wave, duty).DcVolts;
        if (fields.Has("dcVolts") && fields.Has("rmsVolts"))
            fields.Report("dcVolts", "is given beside rmsVolts", "give one of them");
        if (!fields.Has("dcVolts"))
            return new(wave, duty, fields.Number("rmsVolts", NumberRange.Positive));
        var mean = fields.Number("dcVolts", NumberRange.Positive);
        if (dc < 1e-6)
            fields.Report("dcVolts", "is given of a wave without DC", "give rmsVolts");
        return new(wave, duty, mean / Math.Max(dc, 1e-6));
    }

    /// <inheritdoc/>
    public override MeterShowsAnswer Answer()
    {
        var v = MeterWave.Of(Wave, DutyPercent).At(RmsVolts);
        return new(
            v.DcVolts,
            v.RmsVolts,
            v.TrueRmsVolts,
            v.AverageVolts,
            v.AverageWithDcVolts,
            100 * ((v.AverageWithDcVolts / RmsVolts) - 1)
        )
        {
            Words =
            [
                FormattableString.Invariant($"On DC it shows {v.DcVolts:0.00} V, on AC {v.TrueRmsVolts:0.00} V with true RMS."),
                FormattableString.Invariant($"A meter that responds to the average shows {v.AverageVolts:0.00} V on AC."),
                FormattableString.Invariant($"All of it, as heat has it: √(AC² + DC²), {v.RmsVolts:0.00} V."),
            ],
            Outside = ["This holds for the pure wave. Under load a whistle’s wave is in between. Predict the reading from the type sheet."],
        };
    }
}

/// <summary>What <c>meter-shows</c> answers.</summary>
/// <param name="DcVolts">On DC.</param>
/// <param name="RmsVolts">Of all of it.</param>
/// <param name="TrueRmsVolts">On AC, true RMS.</param>
/// <param name="AverageVolts">On AC, responding to the average.</param>
/// <param name="AverageWithDcVolts">The same, where DC gets through to its converter.</param>
/// <param name="AverageErrorPercent">Of that one, against the RMS of all of it.</param>
public sealed record MeterShowsAnswer(
    double DcVolts,
    double RmsVolts,
    double TrueRmsVolts,
    double AverageVolts,
    double AverageWithDcVolts,
    double AverageErrorPercent
) : Answer;
