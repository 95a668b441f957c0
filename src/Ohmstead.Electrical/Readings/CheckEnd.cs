using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>What became of a check: a reading with limits, which others need (docs/formats.md, "Needs and gates").</summary>
public enum CheckEnd
{
    /// <summary>Not taken.</summary>
    NotTaken,

    /// <summary>There is no instrument for it, and someone signed for that.</summary>
    Waived,

    /// <summary>The value with the meter's whole error lies inside the limits.</summary>
    Passed,

    /// <summary>The value lies inside, its meter's error reaches beyond: nothing follows from it.</summary>
    TooClose,

    /// <summary>It would pass, and was probably noted or taken wrongly: nothing follows from it until it is read again.</summary>
    Doubted,

    /// <summary>The value lies outside, or it jumps.</summary>
    Failed,
}

/// <summary>Judges a reading by its limits.</summary>
public static class CheckJudge
{
    /// <summary>How a value ends the check.</summary>
    /// <param name="spec">A reading; without limits everything passes.</param>
    /// <param name="value">As the meter shows it, leads included; positive infinity for OL.</param>
    /// <param name="error">Of the meter that it was taken with.</param>
    public static CheckEnd EndOf(ReadingSpec spec, double value, MeterError error)
    {
        var limits = spec.Limits ?? new Limits(double.NegativeInfinity, double.PositiveInfinity);
        if (double.IsPositiveInfinity(value))
            return double.IsPositiveInfinity(limits.Max) ? CheckEnd.Passed : CheckEnd.Failed;
        var own = value - error.LeadsIn(spec.Quantity);
        var limit = error.LimitAt(own);
        return own < limits.Min || own > limits.Max ? CheckEnd.Failed
            : own - limit >= limits.Min && own + limit <= limits.Max ? CheckEnd.Passed
            : CheckEnd.TooClose;
    }
}
