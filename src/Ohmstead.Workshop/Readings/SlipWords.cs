using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>A reading that a diagnosis takes for a slip, said to a person.</summary>
/// <param name="Headline">"Ten times too high? 35 Ω where 3.5 Ω belongs."</param>
/// <param name="Do">"Read it again."</param>
/// <param name="Correction">What was meant, where one tap puts it right; null where only reading it again does.</param>
public sealed record SlipWords(ProbableSlip Slip, ReadingSpec Spec, string Headline, string Do, Slip? Correction)
{
    /// <summary>From here on a slip is asked about at once [probability].</summary>
    private const double Sure = 0.9;

    /// <summary>True for one that is asked about where the hand is, not only among the findings.</summary>
    public bool IsSure => Slip.Probability >= Sure;

    /// <summary>A slip in words; null where the reading was not taken.</summary>
    public static SlipWords? Of(TypeSheet sheet, UnitReadings readings, ProbableSlip slip)
    {
        if (readings.Readings.LastOrDefault(r => r.Spec.Id == slip.Id && r.IsTaken) is not { } read)
            return null;
        var correction = Readings.Slip.Of(slip, read);
        var belongs =
            correction is not null ? ShownText.Write(correction.Meant, read.Spec.Quantity)
            : slip.Meant is { } meant ? ValueText.About(meant, read.Spec.Quantity)
            : "";
        var where = belongs.Length > 0 ? $" {ReadingWords.Measured(read)} where {belongs} belongs." : "";
        return new(slip, read.Spec, $"{Asked(sheet, read.Spec, slip)}{where}", Act(slip.Kind), correction);
    }

    /// <summary>The slip in the middle of a sentence: "possible slip, ten times too high".</summary>
    public static string Brief(TypeSheet sheet, ReadingSpec spec, ProbableSlip slip)
    {
        var asked = Asked(sheet, spec, slip).TrimEnd('?', '.');
        return $"possible slip, {(asked.StartsWith("A ", StringComparison.Ordinal) ? $"a{asked[1..]}" : Sentences.Small(asked))}";
    }

    private static string Asked(TypeSheet sheet, ReadingSpec spec, ProbableSlip slip) =>
        slip.Kind switch
        {
            SlipKind.TimesTen => "Ten times too high?",
            SlipKind.Tenth => "Ten times too low?",
            SlipKind.TimesThousand => "A thousand times too high?",
            SlipKind.Thousandth => "A thousand times too low?",
            SlipKind.Exchanged when slip.With is { } other => $"Swapped with {PartNames.Reading(sheet, other)}?",
            SlipKind.Sign => "Red and black lead swapped?",
            SlipKind.Quantity => spec.Quantity == Quantity.DcVolts ? "AC noted as DC?" : "DC noted as AC?",
            SlipKind.Place => At(sheet, slip.With) is { Length: > 0 } place ? $"Read between {place}?" : "Read at other posts?",
            SlipKind.Control => "A control not at its setting?",
            _ => "It does not fit the rest.",
        };

    private static string At(TypeSheet sheet, string? terminals) =>
        terminals?.Split("..") is [var from, var to] ? $"{PartNames.Terminal(sheet, from)} and {PartNames.Terminal(sheet, to)}" : "";

    private static string Act(SlipKind kind) =>
        kind switch
        {
            SlipKind.Exchanged => "Read both again.",
            SlipKind.Sign => "Check red and black, then read it again.",
            SlipKind.Quantity => "Check AC or DC on the meter, then read it again.",
            SlipKind.Place => "Check where the leads go, then read it again.",
            SlipKind.Control => "Check every control, then read it again.",
            _ => "Read it again.",
        };
}
