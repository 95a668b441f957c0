using System.Globalization;

namespace Ohmstead.Perf.Experiments.Limits;

/// <summary>A figure and what is asked of it: the run fails where it is not met.</summary>
/// <param name="Figure">In words.</param>
/// <param name="Limit">The worst that is allowed.</param>
/// <param name="IsMost">True where more is worse.</param>
internal sealed record Asked(string Figure, double Measured, double Limit, bool IsMost)
{
    /// <summary>The table's heading.</summary>
    public const string Heading = "| figure | measured | asked | |\n|---|---|---|---|";

    public static Asked AtMost(string figure, double measured, double limit) => new(figure, measured, limit, true);

    public static Asked AtLeast(string figure, double measured, double limit) => new(figure, measured, limit, false);

    /// <summary>Nothing was measured: nothing is asked.</summary>
    public bool IsOpen => double.IsNaN(Measured);

    public bool IsMet => IsOpen || (IsMost ? Measured <= Limit : Measured >= Limit);

    /// <summary>The table's row.</summary>
    public string Row() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"| {Figure} | {Measured:0.###} | {(IsMost ? "at most" : "at least")} {Limit:0.###} | {(IsMet ? "" : "**missed**")} |"
        );
}
