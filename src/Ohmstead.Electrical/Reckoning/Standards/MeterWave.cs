using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Standards;

/// <summary>What meters of each sort show of a wave.</summary>
/// <param name="DcVolts">On DC: the mean.</param>
/// <param name="RmsVolts">Of the whole wave, DC in it.</param>
/// <param name="TrueRmsVolts">A true-RMS meter on AC, which lets no DC through.</param>
/// <param name="AverageVolts">A meter on AC that responds to the average and lets no DC through: π/(2√2) of the mean of │v − mean│.</param>
/// <param name="AverageWithDcVolts">The same where its converter lets DC through: π/(2√2) of the mean of │v│.</param>
public sealed record MeterWave(double DcVolts, double RmsVolts, double TrueRmsVolts, double AverageVolts, double AverageWithDcVolts)
{
    /// <summary>So many even times of a period; sums over them are right to six digits.</summary>
    private const int Moments = 7200;

    /// <summary>The waves that a question may name.</summary>
    public static ImmutableArray<string> Waves { get; } = ["sine", "half-wave", "full-wave", "square", "triangle", "pulse"];

    /// <summary>What meters show of a wave of a form, as a share of its RMS.</summary>
    /// <param name="wave">One of <see cref="Waves"/>.</param>
    /// <param name="dutyPercent">Of a pulse: how much of the time it is on.</param>
    public static MeterWave Of(string wave, double dutyPercent)
    {
        if (wave == "pulse")
            return OfPulse(dutyPercent / 100);
        var v = new double[Moments];
        for (var n = 0; n < Moments; n++)
        {
            var t = (n + 0.5) / Moments;
            var sine = Math.Sin(2 * Math.PI * t);
            v[n] = wave switch
            {
                "half-wave" => Math.Max(0, sine),
                "full-wave" => Math.Abs(sine),
                "square" => Math.Sign(sine),
                "triangle" => 1 - (4 * Math.Abs(t - 0.5)),
                _ => sine,
            };
        }
        var (mean, rms) = (v.Average(), Math.Sqrt(v.Average(x => x * x)));
        var scaled = Math.PI / (2 * Math.Sqrt(2)) / rms;
        return new(
            mean / rms,
            1,
            Math.Sqrt(Math.Max(0, 1 - (mean * mean / (rms * rms)))),
            scaled * v.Average(x => Math.Abs(x - mean)),
            scaled * v.Average(Math.Abs)
        );
    }

    /// <summary>On for a share d of the time, in closed form: mean d, RMS √d, mean of │v − d│ 2d(1 − d).</summary>
    private static MeterWave OfPulse(double d)
    {
        var (rms, form) = (Math.Sqrt(d), Math.PI / (2 * Math.Sqrt(2)));
        return new(rms, 1, Math.Sqrt(1 - d), form * 2 * rms * (1 - d), form * rms);
    }

    /// <summary>The same of a wave of so many volts RMS.</summary>
    public MeterWave At(double rmsVolts) =>
        new(DcVolts * rmsVolts, rmsVolts, TrueRmsVolts * rmsVolts, AverageVolts * rmsVolts, AverageWithDcVolts * rmsVolts);
}
