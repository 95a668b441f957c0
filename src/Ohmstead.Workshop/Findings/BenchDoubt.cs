using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>A doubt about the bench, the type sheet or the inside of a unit, said to a person; how sure it is comes from the diagnosis.</summary>
/// <param name="Headline">What it probably is.</param>
/// <param name="Do">What to do first.</param>
/// <param name="Weakens">True where findings count less until it is settled.</param>
/// <param name="Again">Readings that show or settle it, those that say most of it first.</param>
public sealed record BenchDoubt(DoubtAbout About, string Headline, string Do, bool Weakens, ImmutableArray<ReadingSpec> Again)
{
    /// <summary>What to do about more heat before anything else; its cause is not found yet.</summary>
    public const string NotReturned = "Do not return it until you find the cause.";

    /// <summary>True where the line voltage is put right by now, and the readings that it was wrong for are not taken again yet.</summary>
    public bool IsEntered { get; init; }

    /// <summary>True where nothing but insulation lies off: damp or old paper, whatever the type.</summary>
    public bool IsDamp { get; init; }

    /// <summary>Said once after the doubts that weaken the findings.</summary>
    public const string CountLess = "Findings count less until then.";

    /// <summary>Figures that lie off are named up to here.</summary>
    private const int MostNamed = 4;

    /// <summary>A meter that is off on more is just off.</summary>
    private const int MostQuantities = 3;

    /// <summary>True where what a reading says by itself is doubted for this until it is settled.</summary>
    public bool Covers(ReadingSpec spec) =>
        About is DoubtAbout.Unit or DoubtAbout.Kind ? !IsDamp && spec.Limits is null : Weakens && Again.Any(r => r.Id == spec.Id);

    /// <summary>All doubts of a diagnosis: those that weaken the findings first, the most probable first among them.</summary>
    /// <param name="sheet">The unit's own sheet.</param>
    public static ImmutableArray<BenchDoubt> Of(TypeSheet sheet, UnitReadings readings, IEnumerable<Doubt> doubts) =>
        [.. doubts.Select(d => Of(sheet, readings, d)).OrderByDescending(d => d.Weakens)];

    /// <summary>All doubts of the last finished diagnosis of a unit; none where its type or its readings make no sense.</summary>
    public static ImmutableArray<BenchDoubt> Of(BenchUnit unit, TypeSheet? sheet, Shop shop) =>
        !unit.Doubts.Bench.IsEmpty
        && sheet is not null
        && OwnSheet.OnBench(unit, sheet, shop) is { IsSound: true } own
        && BenchReadings.Of(unit, new UnitModel(own.Value!), shop) is { IsSound: true } readings
            ? Of(own.Value!, readings.Value!, unit.Doubts.Bench)
            : [];

    private static BenchDoubt Of(TypeSheet sheet, UnitReadings readings, Doubt doubt)
    {
        // What shows more heat is on mains; what settles it is not.
        var again =
            doubt.About == DoubtAbout.Internal
                ? [.. sheet.Readings.Where(r => r.Quantity == Quantity.AcAmps && BenchConditions.IsOnLowSupply(sheet, r))]
                : doubt.Readings.Select(sheet.FindReading).OfType<ReadingSpec>().ToImmutableArray();
        var noted = readings.NotedLine(sheet, doubt.Readings);
        var isEntered = doubt.About == DoubtAbout.Line && 2 * Math.Abs(readings.SupplyVolts - doubt.Value) < Math.Abs(noted - doubt.Value);
        if (isEntered)
            again = [.. again.Where(r => readings.NotedLine(sheet, [r.Id]) == noted)];
        var isDamp = IsOfInsulation(sheet, doubt);
        if (isDamp)
            again =
            [
                .. sheet.Readings.Where(r =>
                    r.Quantity == Quantity.InsulationOhms && readings.Readings.Any(t => t.Spec.Id == r.Id && t.IsTaken)
                ),
            ];
        var (headline, act) = doubt.About switch
        {
            _ when isDamp => (
                "The insulation is lower than on other units of this type",
                "Probably damp. Dry it slowly, warm and with the case open, for a day or two. Then read the insulation again."
            ),
            DoubtAbout.Leads => (
                $"Your test leads were probably not taken off: about {ValueText.About(doubt.Value, Quantity.Ohms)}",
                "Touch the leads together and read the ohms. Enter that as test leads of this meter, under Shop."
            ),
            DoubtAbout.Line => (
                $"The line voltage was probably {ValueText.Of(doubt.Value, Quantity.AcVolts)}, not {ValueText.Of(noted, Quantity.AcVolts)}",
                isEntered
                    ? $"{ValueText.Of(readings.SupplyVolts, Quantity.AcVolts)} is entered now. Readings taken before keep {ValueText.Of(noted, Quantity.AcVolts)}. Take those on mains again."
                    : "Read the outlet again with the unit running. Enter it as line voltage. Then take the mains readings again."
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
                $"{NotReturned} Smell, smoke or a growl: plug out at once. At the low-voltage supply, not on mains: lift the rollers or the shoe, read the amps again. Then unhook each disc and lamp in turn. Still high: it is the coil or the core."
            ),
            _ => (
                "These readings do not fit this type",
                "Perhaps another type. Compare the plate, the posts and the levers. No mains on a guessed type."
            ),
        };
        return new(doubt.About, headline, act, doubt.About != DoubtAbout.Internal && !isDamp, again)
        {
            IsEntered = isEntered,
            IsDamp = isDamp,
        };
    }

    /// <summary>Where nothing else lies off, it is no other type: paper takes up water in every make (common practice, no source).</summary>
    private static bool IsOfInsulation(TypeSheet sheet, Doubt doubt) =>
        doubt.About is DoubtAbout.Unit or DoubtAbout.Kind
        && !doubt.Parameters.IsEmpty
        && doubt.Parameters.All(p => sheet.Elements.Any(e => e.Kind == ElementKind.Insulation && p == $"{e.Id}.ohms"));

    /// <summary>"This unit makes about 11 W more heat than it should".</summary>
    private static string Heat(Doubt doubt) =>
        $"This unit makes about {ValueText.About(doubt.Value, Quantity.Watts)} more heat than it should";

    /// <summary>" on AC volts and ohms"; empty for none, and for more than say anything.</summary>
    private static string On(ImmutableArray<ReadingSpec> again)
    {
        var all = again.Select(r => r.Quantity).Distinct().Select(Name).ToList();
        return all.Count is 0 or > MostQuantities
            ? ""
            : $" on {(all.Count == 1 ? all[0] : $"{string.Join(", ", all[..^1])} and {all[^1]}")}";
    }

    private static string Name(Quantity quantity) =>
        quantity switch
        {
            Quantity.Ohms => "ohms",
            Quantity.InsulationOhms => "insulation",
            Quantity.AcVolts => "AC volts",
            Quantity.DcVolts => "DC volts",
            Quantity.AcAmps => "amps",
            _ => "watts",
        };

    /// <summary>"Off: main winding, ohms; core, heat."</summary>
    private static string Named(TypeSheet sheet, ImmutableArray<string> parameters) =>
        parameters.IsEmpty
            ? ""
            : $"Off: {string.Join("; ", parameters.Select(p => Name(sheet, p)).Distinct(StringComparer.Ordinal).Take(MostNamed))}. ";

    private static string Name(TypeSheet sheet, string parameter)
    {
        var at = parameter.LastIndexOf('.');
        var (id, field) = at < 0 ? (parameter, "") : (parameter[..at], parameter[(at + 1)..]);
        var name = sheet.Cores.Any(c => c.Id == id) ? PartNames.Core(sheet, id) : PartNames.Of(sheet, id);
        return field.Length == 0 ? name : $"{name}, {FieldName(field)}";
    }

    /// <summary>What a figure of the type sheet is to a meter or to the hand.</summary>
    private static string FieldName(string field) =>
        field switch
        {
            "ohms" or "seriesOhms" => "ohms",
            "contactOhms" => "contact ohms",
            "turns" => "turns",
            "lossOhms" or "lossWatts" => "heat",
            "saturationAmps" => "drop",
            "leakageOhms" => "leak back",
            "leakageHenries" => "volts lost under load",
            _ => "no-load amps",
        };
}
