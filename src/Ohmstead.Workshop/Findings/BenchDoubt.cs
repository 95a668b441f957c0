using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>A doubt about the bench, the type sheet or the inside of a unit, said to a person; how sure it is comes from the diagnosis.</summary>
/// <param name="Headline">What it probably is.</param>
/// <param name="Do">What to do first.</param>
/// <param name="Weakens">True where findings count less until it is settled.</param>
/// <param name="Again">Readings that show or settle it, those that say most of it first.</param>
public sealed record BenchDoubt(DoubtAbout About, string Headline, string Do, bool Weakens, ImmutableArray<ReadingSpec> Again)
{
    /// <summary>Said once after the doubts that weaken the findings.</summary>
    public const string CountLess = "Findings count less until then.";

    /// <summary>Figures that lie off are named up to here.</summary>
    private const int MostNamed = 4;

    /// <summary>All doubts of a diagnosis: those that weaken the findings first, the most probable first among them.</summary>
    /// <param name="sheet">The unit's own sheet.</param>
    public static ImmutableArray<BenchDoubt> Of(TypeSheet sheet, UnitReadings readings, IEnumerable<Doubt> doubts) =>
        [.. doubts.Select(d => Of(sheet, readings, d)).OrderByDescending(d => d.Weakens)];

    private static BenchDoubt Of(TypeSheet sheet, UnitReadings readings, Doubt doubt)
    {
        // What shows more heat is on mains; what settles it is not.
        var again =
            doubt.About == DoubtAbout.Internal
                ? [.. sheet.Readings.Where(r => r.Quantity == Quantity.AcAmps && BenchConditions.IsOnLowSupply(sheet, r))]
                : doubt.Readings.Select(sheet.FindReading).OfType<ReadingSpec>().ToImmutableArray();
        var (headline, act) = doubt.About switch
        {
            DoubtAbout.Leads => (
                $"Your test leads were probably not taken off: about {ValueText.About(doubt.Value, Quantity.Ohms)}",
                "Touch the leads together, read the ohms, and enter them under Shop."
            ),
            DoubtAbout.Line => (
                $"The line voltage was probably {ValueText.Of(doubt.Value, Quantity.AcVolts)}, not {ValueText.Of(readings.SupplyVolts, Quantity.AcVolts)}",
                "Read the outlet again with the unit running, and enter it as line voltage."
            ),
            DoubtAbout.Meter => (
                $"Your meter is probably off{On(again)}: about {ValueText.Plain(Math.Round(doubt.Value, 1))} times its error",
                "Put in a new battery. Read a fresh 1.5 V cell and a known resistor. Or use another meter."
            ),
            DoubtAbout.Unit => (
                "Probably another batch: this unit differs from its type sheet",
                $"{Named(sheet, doubt.Parameters)}Look for a different coil, disc or plate. Use another type sheet, or let this one learn from sound units."
            ),
            DoubtAbout.Internal => (
                Heat(doubt),
                "Do not hand it back before you found the cause. At the low-voltage supply, not on mains: lift the rollers, read the amps again. Then unhook each disc and lamp in turn. Still high: it is the coil or the core. Smell, smoke or a growl: plug out at once."
            ),
            _ => ("These readings do not fit this type", "Perhaps another type. Compare the plate, the posts and the levers. No mains on a guessed type."),
        };
        return new(doubt.About, headline, act, doubt.About != DoubtAbout.Internal, again);
    }

    /// <summary>"This unit makes about 11 W more heat than it should".</summary>
    public static string Heat(Doubt doubt) => $"This unit makes about {ValueText.About(doubt.Value, Quantity.Watts)} more heat than it should";

    private static string On(ImmutableArray<ReadingSpec> again) =>
        again.IsEmpty ? ""
        : again[0].Quantity switch
        {
            Quantity.Ohms => " on ohms",
            Quantity.InsulationOhms => " on insulation",
            Quantity.AcVolts => " on AC volts",
            Quantity.DcVolts => " on DC volts",
            Quantity.AcAmps => " on amps",
            _ => " on watts",
        };

    /// <summary>"Off: main winding, ohms; core, loss watts."</summary>
    private static string Named(TypeSheet sheet, ImmutableArray<string> parameters) =>
        parameters.IsEmpty ? "" : $"Off: {string.Join("; ", parameters.Take(MostNamed).Select(p => Name(sheet, p)))}. ";

    private static string Name(TypeSheet sheet, string parameter)
    {
        var at = parameter.LastIndexOf('.');
        var (id, field) = at < 0 ? (parameter, "") : (parameter[..at], parameter[(at + 1)..]);
        var name = sheet.Cores.Any(c => c.Id == id) ? PartNames.Core(sheet, id) : PartNames.Of(sheet, id);
        return field.Length == 0 ? name : $"{name}, {string.Concat(field.Select(c => char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{c}"))}";
    }
}
