using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// <c>rectifier</c>: the disc of a whistle control as it is, a new one, or a diode in its place. Each is put into the sheet's circuit and
/// solved at some loads and both steps of the lever (docs/methods/deciding.md).
/// </summary>
/// <param name="Unit">The sheet, as this unit is.</param>
/// <param name="Element">The rectifier whose place it is.</param>
/// <param name="First">Volts DC at a post with the lever half pressed: its state is used, not its loads.</param>
/// <param name="Second">The same with the lever fully pressed.</param>
/// <param name="Relay">Of the whistle in the tender.</param>
/// <param name="Place">The room there is, and how warm it is.</param>
/// <param name="WantedSign">positive, negative or either: of the DC at the first terminal of the readings.</param>
public sealed record RectifierChoice(
    TypeSheet Unit,
    Rectifier Element,
    ReadingSpec First,
    ReadingSpec Second,
    double SupplyVolts,
    ImmutableArray<double> LoadsOhms,
    ImmutableArray<RectifierPart> Parts,
    ImmutableArray<double> ForwardAmps,
    WhistleRelay Relay,
    RectifierPlace Place,
    string WantedSign
) : Question
{
    private const int MostParts = 20;
    private const int MostLoads = 20;

    /// <inheritdoc/>
    public override RectifierAnswer Answer()
    {
        ImmutableArray<RectifierOfPart> parts = [.. Parts.Select(Of)];
        return new RectifierAnswer(parts)
        {
            Words =
            [
                .. parts.Select(Said),
                .. Reasons.If("The volts at which the whistle lets go have no source.", Relay == WhistleRelay.Usual),
            ],
            Cautions = ["Fit no part with the plug in. The posts are live from the line through the coil."],
            Outside =
            [
                "Train motors are inductive. These loads are plain resistance.",
                "DC through a coil saturates a real core. That is left out.",
                "The heat is that of long calls in free air.",
                .. Reasons.If(
                    "Some states could not be solved. Nothing is said of them.",
                    parts.Any(p => p.Loads.Any(l => l.First is null || l.Second is null))
                ),
            ],
        };
    }

    private RectifierOfPart Of(RectifierPart part)
    {
        var placed = Unit with { Elements = Unit.Elements.Replace(Element, part.InPlaceOf(Element)) };
        var model = new UnitModel(placed);
        ImmutableArray<RectifierAtLoad> loads =
        [
            .. LoadsOhms.Select(ohms =>
            {
                var (first, second) = (At(model, First, ohms), At(model, Second, ohms));
                return new RectifierAtLoad(ohms, first, second, Relay.Whistles(first?.DcVolts, second?.DcVolts));
            }),
        ];
        ImmutableArray<RectifierState> solved = [.. loads.SelectMany(l => new[] { l.First, l.Second }).OfType<RectifierState>()];
        double? Most(Func<RectifierState, double> of) => solved.IsEmpty ? null : solved.Max(of);
        return RectifierOfPart.Of(
            part,
            Place,
            ForwardAmps,
            loads,
            Polarity(loads[0].First?.DcVolts),
            Most(s => s.PeakReverseVolts),
            Most(s => s.PeakAmps),
            Most(s => s.Watts)
        );
    }

    /// <summary>Volts at the posts and what the part sees, at a load in place of those of the reading; null where it cannot be solved.</summary>
    private RectifierState? At(UnitModel model, ReadingSpec reading, double ohms)
    {
        var state = UnitReadings.AtLine(Unit, reading.State, SupplyVolts) with
        {
            Loads = [new LoadSpec(reading.From, reading.To, ohms, 0)],
        };
        double? Volts(Quantity quantity) =>
            new ReadingSolver()
                .Solve(
                    CircuitBuilder.Build(model, reading with { Quantity = quantity }, state, new bool[Unit.Elements.Length]),
                    model.Nominal
                )
                .Value;
        if (
            Volts(Quantity.DcVolts) is not { } dc
            || Volts(Quantity.AcVolts) is not { } ac
            || PartWave.Of(model, reading, state, Element.Id) is not { } wave
        )
            return null;
        return new(dc, ac, Math.Sqrt((dc * dc) + (ac * ac)), wave.PeakReverseVolts, wave.PeakAmps, wave.Watts);
    }

    private string? Polarity(double? dcVolts) =>
        WantedSign == "either" ? "either"
        : dcVolts is not { } dc ? null
        : WantedSign == (dc > 0 ? "positive" : "negative") ? "as wanted"
        : "exchange its ends";

    private static string Said(RectifierOfPart part)
    {
        var holds = part
            .Loads.Where(l => l.Whistle == WhistleRelay.Holds)
            .Select(l => FormattableString.Invariant($"{l.Ohms:0.##} Ω"))
            .ToList();
        return holds.Count > 0
            ? $"{part.Id}: the whistle holds at {string.Join(", ", holds)}."
            : $"{part.Id}: the whistle holds at none of these loads.";
    }

    /// <summary>Reads its fields.</summary>
    public static RectifierChoice Read(QuestionFields fields)
    {
        var sheet = fields.NeededSheet();
        var element = ReadElement(fields, sheet);
        var steps = ReadSteps(fields, sheet);
        var loads = fields.Numbers("loadsOhms", new NumberRange(1e-4, 1e12), least: 1);
        if (loads.Length > MostLoads)
            fields.Report("loadsOhms", "is too long", FormattableString.Invariant($"at most {MostLoads} loads are expected"));
        var ids = new HashSet<string>(StringComparer.Ordinal);
        // A question with problems is never answered: what stands in for what is missing is not used.
        return new(
            sheet!,
            element!,
            steps.ElementAtOrDefault(0)!,
            steps.ElementAtOrDefault(1)!,
            fields.Number("supplyVolts", new NumberRange(1, 1000), sheet?.SupplyVolts ?? 1),
            loads,
            fields.List("parts", f => RectifierPart.Read(f, ids), most: MostParts),
            fields.Numbers("forwardAmps", NumberRange.NotNegative, [1, 2, 5]),
            WhistleRelay.Read(fields.Part("relay")),
            RectifierPlace.Read(fields),
            fields.OneOf("wantedSign", ["positive", "negative", "either"], "either")
        );
    }

    private static Rectifier? ReadElement(QuestionFields fields, TypeSheet? sheet)
    {
        var id = fields.Word("element");
        var found = sheet?.Elements.OfType<Rectifier>().FirstOrDefault(e => e.Id == id);
        if (sheet is not null && found is null && id.Length > 0)
            fields.Report(
                "element",
                $"\"{id}\" is no rectifier of the sheet",
                Known(sheet.Elements.OfType<Rectifier>().Select(e => e.Id), "rectifier")
            );
        return found;
    }

    private static ImmutableArray<ReadingSpec> ReadSteps(QuestionFields fields, TypeSheet? sheet)
    {
        var places = fields.Places("steps", least: 2);
        if (places.Length > 2)
            fields.Report("steps", "names more than two readings", "[first step, second step] is expected");
        var found = ImmutableArray.CreateBuilder<ReadingSpec>();
        foreach (var place in places)
        {
            var id = place.AsWord();
            var reading = sheet?.FindReading(id);
            if (reading is { Quantity: Quantity.DcVolts, State.Source: { IsDirect: false } })
                found.Add(reading);
            else if (sheet is not null && id.Length > 0)
                place.Report(
                    reading is null ? $"\"{id}\" is no reading of the sheet" : $"\"{id}\" is not a reading of DC volts on an AC supply",
                    Known(
                        sheet.Readings.Where(r => r is { Quantity: Quantity.DcVolts, State.Source: { IsDirect: false } }).Select(r => r.Id),
                        "reading of dc-volts"
                    )
                );
        }
        return found.ToImmutable();
    }

    private static string Known(IEnumerable<string> ids, string what) =>
        ids.Take(12).ToList() is { Count: > 0 } some ? $"one of {string.Join(", ", some)}" : $"the sheet has no {what}";
}
