using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Proving;

/// <summary>The supply of about 12 V for the check before mains: what it must be, and whether what was measured is that.</summary>
public static class LowSupply
{
    private const double Least = 6;
    private const double Most = 16;

    /// <summary>An alternating supply shows next to nothing on DC [share of the AC volts]. Common practice, no source.</summary>
    private const double MostDirect = 0.1;

    /// <summary>What has to be so before the first low reading, each a line.</summary>
    public static IReadOnlyList<string> Rules { get; } =
    [
        "About 12 V AC from an isolating transformer. Not a variable transformer: that does not isolate.",
        "Read it on AC and on DC first. Many plug-in adapters give DC, and electronic lamp supplies are not at 60 Hz.",
        "Fused at 0.5 A, on clips or a lead that cannot enter an outlet.",
        "Clip it onto the unit's plug, with the plug in sight.",
    ];

    /// <summary>Writes down what was measured, or says what is wrong with it.</summary>
    /// <param name="ac">As typed.</param>
    /// <param name="dc">As typed.</param>
    public static Taken State(string ac, string dc, string by)
    {
        var (acVolts, acProblem) = ShopEdit.Number(ac, 0, 1000);
        var (dcVolts, dcProblem) = ShopEdit.Number(dc, -1000, 1000);
        var problem =
            acProblem.Length > 0 ? $"On AC: {acProblem}"
            : dcProblem.Length > 0 ? $"On DC: {dcProblem}"
            : Problem(acVolts, Math.Abs(dcVolts));
        if (problem.Length == 0 && by.Trim().Length is 0 or > 120)
            problem = "Say who measured it.";
        return problem.Length > 0 ? new(null, problem) : new(new SupplyStated(acVolts, dcVolts, by.Trim()), "");
    }

    private static string Problem(double ac, double dc) =>
        ac > 30 || dc > 30
            ? "That is too much: over 30 V nothing may go onto the plug before the wiring check passes. Take it off. Use about 12 V AC from an isolating transformer."
        : dc > Math.Max(MostDirect * ac, 0.5)
            ? "It gives DC. On DC a transformer shows only its copper, and its core saturates. Use a supply that reads next to nothing on DC."
        : ac < Least ? "That is too little to show a mistake. Use about 12 V AC."
        : ac > Most ? "That is more than the fuse and the core are meant for. Use about 12 V AC."
        : "";
}
