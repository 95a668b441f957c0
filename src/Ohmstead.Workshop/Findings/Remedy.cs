using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Workshop.Findings;

/// <summary>What a finding means and what the person at the bench does about it: a row of <c>what-to-do.json</c>.</summary>
/// <param name="Kind">Kind of the part, as in a type sheet; "slider" for a slider.</param>
/// <param name="Mode">Fault mode.</param>
/// <param name="Role">What the part is there for (<see cref="PartRole"/>); empty for any.</param>
/// <param name="Headline">The fault in plain words, without which of several parts has it: "Worn roller".</param>
/// <param name="Means">What it means, in a sentence.</param>
/// <param name="Notices">What the owner notices.</param>
/// <param name="Act">The act; its first word is Leave, Clean, Tighten or Replace, or what comes before these.</param>
/// <param name="Do">How, step by step.</param>
/// <param name="WorkedWhen">What must be so afterwards, in words.</param>
/// <param name="Again">The readings that show it, first ones first (<see cref="ProofReading"/>).</param>
/// <param name="Minutes">From and to, with the case open [min]: common practice, no source.</param>
/// <param name="Parts">What is needed and what it costs in the shop's money: invented prices.</param>
public sealed record Remedy(
    string Kind,
    string Mode,
    string Role,
    string Headline,
    string Means,
    string Notices,
    string Act,
    ImmutableArray<string> Do,
    string WorkedWhen,
    ImmutableArray<ProofReading> Again,
    (int From, int To) Minutes,
    ImmutableArray<(string Name, double Price)> Parts
)
{
    /// <summary>What goes on after the minutes: "then 1–2 days to dry"; may be empty.</summary>
    public string Waits { get; init; } = "";

    /// <summary>What to mind while doing it; may be empty.</summary>
    public string Caution { get; init; } = "";

    /// <summary>Where to stop; may be empty.</summary>
    public string StopWhen { get; init; } = "";

    /// <summary>Where it comes from beside the shop's own notes: "common practice", "memory".</summary>
    public ImmutableArray<string> From { get; init; } = [];

    /// <summary>"10–30 min", "10 min, then 1–2 days to dry".</summary>
    public string Time =>
        (Minutes.From == Minutes.To ? Text(Minutes.To) : $"{Text(Minutes.From)}–{Text(Minutes.To)}")
        + (Waits.Length > 0 ? $" min, {Waits}" : " min");

    private static string Text(int minutes) => minutes.ToString(CultureInfo.InvariantCulture);
}

/// <summary>Readings that show whether a repair worked, chosen from a sheet by what they measure and how they are fed.</summary>
public enum ProofReading
{
    /// <summary>Ohms at the part's own two ends.</summary>
    OwnOhms,

    /// <summary>Ohms anywhere, nothing fed.</summary>
    Ohms,

    /// <summary>Ohms between the two points of the plug.</summary>
    Blades,

    /// <summary>Ohms between nets that must be apart: OL.</summary>
    Apart,

    /// <summary>Insulation at 500 V.</summary>
    Insulation,

    /// <summary>The drop with direct current driven through it.</summary>
    Drop,

    /// <summary>AC volts, fed by the low-voltage supply.</summary>
    LowVolts,

    /// <summary>DC volts, fed by the low-voltage supply.</summary>
    LowDc,

    /// <summary>Amps from the low-voltage supply.</summary>
    LowAmps,

    /// <summary>Volts behind the series lamp.</summary>
    Lamp,

    /// <summary>Watts from the mains with nothing connected.</summary>
    NoLoadWatts,

    /// <summary>AC volts at a post with nothing on it, from the mains.</summary>
    NoLoadVolts,

    /// <summary>AC volts at a post under load, from the mains.</summary>
    LoadedVolts,

    /// <summary>DC volts at a post, from the mains.</summary>
    DcVolts,
}
