using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>A fault that may be there, as it is said to a person.</summary>
/// <param name="Mode">The fault; the first of them where several parts could equally have it.</param>
/// <param name="Name">The headline: "Worn roller: roller 1", "Leaky rectifier plate, one of four".</param>
/// <param name="Sure">How sure, in words: "very likely".</param>
/// <param name="Size">How big, with the range that holds it in 95 %, and what a sound part has; empty where it has no size.</param>
/// <param name="For">Readings that point to it, strongest first.</param>
/// <param name="Against">Readings that speak against it, strongest first.</param>
public sealed record Finding(
    FaultMode Mode,
    string Name,
    double Probability,
    string Sure,
    string Size,
    Judgement Judgement,
    ImmutableArray<EvidenceLine> For,
    ImmutableArray<EvidenceLine> Against
)
{
    /// <summary>What to do about it.</summary>
    public required Remedy Remedy { get; init; }

    /// <summary>The faults that are equal by all that was read, this one first; just this one where it has no equals.</summary>
    public ImmutableArray<FaultMode> Members { get; init; } = [];

    /// <summary>A chance less than this times that of an unserviced unit is that chance still.</summary>
    private const double Raised = 1.3;

    /// <summary>
    /// True when nothing taken or seen speaks of it: its chance is that of any unserviced unit, and it is no finding.
    /// </summary>
    public bool IsUntested => Judgement == Judgement.Open && For.IsEmpty && !IsRaised(Probability, Members);

    /// <summary>True when one of these faults is likelier than on any unserviced unit.</summary>
    internal static bool IsRaised(double probability, ImmutableArray<FaultMode> members) =>
        probability > Raised * members.Sum(m => m.Percent) / 100;

    /// <summary>The size of a fault in words.</summary>
    public static string SizeOf(TypeSheet sheet, FaultProbability fault)
    {
        if (fault is not { Size: { } size, Low: { } low, High: { } high } || fault.Mode.Size == SizeKind.None)
            return "";
        if (fault.Mode.Size == SizeKind.WholeTurns)
            return Ranged(Counted.Of((int)Math.Round(size), "turn"), Plain(low), Plain(high));
        if (fault.Mode.Mode == "drifted")
            return Ranged($"{ValueText.Number(size)} times its ohms", ValueText.Number(low), ValueText.Number(high));
        var words = $"about {ValueText.Of(size, Quantity.Ohms)} (95 %: {ValueText.Band(low, high, Quantity.Ohms)})";
        return SoundOhms(sheet, fault.Mode) is { } sound ? $"{words}, should be {ValueText.Of(sound, Quantity.Ohms)}" : words;
    }

    private static string Plain(double turns) => ValueText.Plain(Math.Round(turns));

    private static string Ranged(string size, string low, string high) => low == high ? size : $"about {size} (95 %: {low}–{high})";

    /// <summary>The ohms that the sheet gives the part which the fault makes larger or smaller; null where there is no one such figure.</summary>
    private static double? SoundOhms(TypeSheet sheet, FaultMode mode)
    {
        if (mode.IsSlider)
            return sheet.Sliders.First(s => s.Id == mode.Parts[0]).ContactOhms;
        return (sheet.Elements.First(e => e.Id == mode.Parts[0]), mode.Mode) switch
        {
            (Resistive r, _) => r.Ohms,
            (Switch s, "resistive") => s.Ohms,
            (Rectifier r, "high-drop") => r.SeriesOhms,
            (Rectifier r, "leaky") => r.LeakageOhms,
            _ => null,
        };
    }
}

/// <summary>A reading that points to a fault or speaks against it.</summary>
/// <param name="Words">What was read.</param>
/// <param name="Nats">How much it says: the log of the likelihood with the fault over that without [nat].</param>
public sealed record EvidenceLine(ReadingSpec Spec, string Words, double Nats)
{
    /// <summary>How strongly, in words: twenty times as likely one way is strong.</summary>
    public string Strength =>
        Math.Abs(Nats) switch
        {
            >= 3 => "strongly",
            >= 1 => "clearly",
            _ => "a little",
        };
}
