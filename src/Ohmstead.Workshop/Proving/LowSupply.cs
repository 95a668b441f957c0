using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Proving;

/// <summary>The low-voltage supply of the wiring check: what it must be, and whether what was measured is that.</summary>
public static class LowSupply
{
    /// <summary>What is asked for where the sheet asks for nothing [V].</summary>
    private const double UsualVolts = 12;

    /// <summary>Above this a source is not low (docs/formats.md) [V].</summary>
    private const double MostVolts = 30;

    /// <summary>From half of what is asked for to a third more: less shows no mistake, more heats the core. Common practice, no source.</summary>
    private const double LeastShare = 0.5;
    private const double MostShare = 4.0 / 3;

    /// <summary>An alternating supply shows next to nothing on DC [share of the AC volts]. Common practice, no source.</summary>
    private const double MostDirect = 0.1;

    /// <summary>The volts that the readings of a sheet ask of the supply: a unit for 230 V needs more than one for 120.</summary>
    public static double WantedVolts(TypeSheet sheet) =>
        sheet
            .Readings.Select(r => r.State.Source)
            .Where(s => s is { IsDirect: false, Volts: <= MostVolts })
            .Select(s => s!.Volts)
            .DefaultIfEmpty(UsualVolts)
            .Max();

    /// <summary>What has to be so before the first low reading, each a line.</summary>
    /// <param name="volts">What the sheet asks for (<see cref="WantedVolts"/>).</param>
    public static IReadOnlyList<string> Rules(double volts) =>
        [
            $"{About(volts)} from an isolating transformer. Not a variable transformer: that does not isolate.",
            "Read it on AC and on DC first. Many plug-in adapters give DC, and electronic lamp supplies are not at 60 Hz.",
            "Fused at 0.5 A, on clips or a lead that cannot enter an outlet.",
            "Clip it onto the unit's plug, with the plug in sight.",
        ];

    /// <summary>Writes down what was measured, or says what is wrong with it.</summary>
    /// <param name="ac">As typed.</param>
    /// <param name="dc">As typed.</param>
    /// <param name="volts">What the sheet asks for (<see cref="WantedVolts"/>).</param>
    public static TypedFact State(string ac, string dc, string by, double volts)
    {
        var (acVolts, acProblem) = ShopEdit.Number(ac, 0, 1000);
        var (dcVolts, dcProblem) = ShopEdit.Number(dc, -1000, 1000);
        var problem =
            acProblem.Length > 0 ? $"On AC: {acProblem}"
            : dcProblem.Length > 0 ? $"On DC: {dcProblem}"
            : Problem(acVolts, Math.Abs(dcVolts), volts);
        if (problem.Length == 0 && by.Trim().Length is 0 or > 120)
            problem = "Say who measured it.";
        return problem.Length > 0 ? new(null, problem) : new(new SupplyStated(acVolts, dcVolts, by.Trim()), "");
    }

    private static string About(double volts) => $"About {ValueText.Plain(volts)} V AC";

    private static string Problem(double ac, double dc, double volts) =>
        ac > MostVolts || dc > MostVolts
            ? $"That is too much: over 30 V nothing may go onto the plug before the wiring check passes. Take it off. {About(volts)} is right, from an isolating transformer."
        : dc > Math.Max(MostDirect * ac, 0.5)
            ? "It gives DC. On DC a transformer shows only its copper, and its core saturates. Use a supply that reads next to nothing on DC."
        : ac < LeastShare * volts ? $"That is too little to show a mistake. {About(volts)} is right."
        : ac > MostShare * volts ? $"That is more than the fuse and the core are meant for. {About(volts)} is right."
        : "";
}
