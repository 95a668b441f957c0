using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>What <c>quote</c> answers.</summary>
/// <param name="Finished">Of jobs that are not stopped.</param>
/// <param name="All">Of all jobs; a stopped one counts its minutes up to the stop, and its fee.</param>
/// <param name="AboveLinePercent">Of all jobs; null without that line.</param>
/// <param name="AboveWorthPercent">Of all jobs; null without that line.</param>
public sealed record QuoteAnswer(
    ImmutableArray<QuoteStep> Steps,
    QuoteRange Finished,
    QuoteRange All,
    ImmutableArray<QuoteStop> Stops,
    double FinishedPercent,
    double? AboveLinePercent,
    double? AboveWorthPercent,
    int Draws
) : Answer;

/// <summary>A step's minutes in the next job.</summary>
/// <param name="Records">How many earlier jobs they rest on.</param>
public sealed record QuoteStep(string Id, double MedianMinutes, double P90Minutes, double LogSpread, int Records);

/// <summary>A stop, and how many of all jobs end at it.</summary>
public sealed record QuoteStop(string After, double Percent, decimal Fee);

/// <summary>Minutes and bill of some jobs.</summary>
public sealed record QuoteRange(QuoteSpread Minutes, QuoteSpread Bill)
{
    /// <summary>Of no job at all.</summary>
    internal static QuoteRange Nothing { get; } = new(new(null, null, null), new(null, null, null));
}

/// <summary>Half lies below P50, nine of ten below P90; null where there is no such job.</summary>
public sealed record QuoteSpread(double? P50, double? P90, double? Mean);
