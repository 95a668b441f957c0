using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Probability;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>The error of a mean of readings.</summary>
/// <param name="Limit">Of the meter, every error within it equally likely; in the unit of the limit.</param>
/// <param name="Scatter">Standard deviation of the mean.</param>
public sealed record MeanError(double Limit, double Scatter)
{
    internal MeterErrorLaw Law => new(Limit, Scatter);

    /// <summary>Reads what a question says of it.</summary>
    /// <param name="values">The readings.</param>
    /// <param name="isOver">The meter showed OL: no error is needed.</param>
    /// <param name="perUnit">What a unit of the meter is in the unit of the limit.</param>
    internal static MeanError Read(QuestionFields fields, ImmutableArray<double> values, bool isOver, double perUnit)
    {
        var known = fields.Optional("knownSpread", NumberRange.NotNegative);
        var standard = fields.Optional("standardUncertainty", NumberRange.NotNegative);
        if (standard is { } u)
        {
            ReadLimit(fields, isRequired: false);
            return new(0, u);
        }
        var (percent, floor) = ReadLimit(fields, isRequired: !isOver);
        if (values.Length is 2 or 3 && known is null)
            fields.Report(
                "values",
                $"are {(values.Length == 2 ? "two" : "three")}",
                "one, or four and more; two or three only with knownSpread"
            );
        if (values.IsEmpty)
            return new(0, 0);
        var limit = (percent / 100 * Math.Abs(values.Average())) + (floor * perUnit);
        return new(
            limit,
            known is { } spread ? spread / Math.Sqrt(values.Length)
                : values.Length >= 4 ? ScatterOf(values)
                : 0
        );
    }

    /// <summary>s/√n, wider by √((n − 1)/(n − 3)) because s itself is only known from n readings (key jcgm-101, 6.4.9.4).</summary>
    private static double ScatterOf(ImmutableArray<double> values)
    {
        var (n, mean) = (values.Length, values.Average());
        var s = Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (n - 1));
        return s / Math.Sqrt(n) * Math.Sqrt((n - 1.0) / (n - 3));
    }

    private static (double Percent, double Floor) ReadLimit(QuestionFields fields, bool isRequired)
    {
        const string right = "{ \"percent\": …, \"floor\": … }";
        return (isRequired ? fields.NeededPart("meter", right) : fields.Part("meter")) is { } meter
            ? (meter.Number("percent", NumberRange.Percent), meter.Number("floor", NumberRange.NotNegative))
            : (0, 0);
    }
}
