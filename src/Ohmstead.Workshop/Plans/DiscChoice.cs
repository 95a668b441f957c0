using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>
/// A whistle disc as it is, a new disc and a diode side by side at three loads (<see cref="RectifierChoice"/>), in words what the listener
/// will notice.
/// </summary>
/// <param name="Parts">As it is, a new disc, a diode.</param>
/// <param name="Cautions">The hazards.</param>
/// <param name="Outside">What it leaves out.</param>
public sealed record DiscChoice(ImmutableArray<DiscPart> Parts, ImmutableArray<string> Cautions, ImmutableArray<string> Outside)
{
    /// <summary>An engine alone, one with some lit cars, a long lit train [Ω].</summary>
    public static ImmutableArray<(double Ohms, string Train)> Loads { get; } =
    [(24, "engine alone (24 Ω)"), (9, "some lit cars (9 Ω)"), (4.8, "long lit train (4.8 Ω)")];

    /// <summary>A disc stands so much reverse volts, and is so large [mm]. Common practice, no source.</summary>
    private const double DiscReverseVolts = 26;
    private static readonly (double, double) DiscBody = (32, 12);

    /// <summary>A silicon diode of 6–10 A on its own leads. Common practice, no source.</summary>
    private static readonly (double, double) DiodeBody = (9.5, 5.3);
    private const double DiodeReverseVolts = 100;

    /// <summary>Figures of the diode, as a type sheet names them.</summary>
    public static ImmutableArray<PartFigure> DiodeFigures { get; } =
    [new("saturationAmps", 1e-9), new("slopeVolts", 0.045), new("seriesOhms", 0.02), new("leakageOhms", 1e7)];

    private const string AsItIs = "as it is";
    private const string NewDisc = "new disc";
    private const string Diode = "diode";

    /// <summary>
    /// The two readings of the sheet that show what the disc does to the whistle: DC at a post, half pressed and fully pressed. Null where
    /// it has none, as for a stack of plates.
    /// </summary>
    public static (ReadingSpec First, ReadingSpec Second)? Steps(UnitModel model, string about)
    {
        if (new FaultCatalogue(model).Find($"{about}:open") is not { Kind: ElementKind.Rectifier } open)
            return null;
        var fault = new Fault(open, 0);
        var shown = model
            .Sheet.Readings.Where(r => r is { Quantity: Quantity.DcVolts, State.Source: { IsMains: true, IsDirect: false } })
            .Where(r => FaultEffect.Limits(model, r, fault, Meter.Usual) > 1)
            .GroupBy(r => (r.From, r.To))
            .FirstOrDefault(g => g.Count() > 1)
            ?.ToList();
        return shown is null ? null : (shown[0], shown[1]);
    }

    /// <summary>Works it out; null where the sheet has no readings that show it.</summary>
    /// <param name="type">The type sheet: a new disc is as it says.</param>
    /// <param name="own">The sheet with this unit's changes.</param>
    /// <param name="fault">What the findings estimate of it; null where they do not.</param>
    public static DiscChoice? Of(TypeSheet type, UnitModel own, string about, FaultProbability? fault, DiscPlace place)
    {
        if (
            own.Sheet.Elements.OfType<Rectifier>().FirstOrDefault(e => e.Id == about) is not { } element
            || Steps(own, about) is not { } steps
        )
            return null;
        var sound = type.Elements.OfType<Rectifier>().FirstOrDefault(e => e.Id == about) ?? element;
        var answer = new RectifierChoice(
            own.Sheet,
            element,
            steps.First,
            steps.Second,
            own.Sheet.SupplyVolts,
            [.. Loads.Select(l => l.Ohms)],
            [Disc(AsItIs, Aged(element, fault)), Disc(NewDisc, sound), DiodePart()],
            [1, 2, 5],
            WhistleRelay.Usual,
            new RectifierPlace(place.Space, 3, 45, 100),
            place.WantedSign
        ).Answer();
        return new([.. answer.Parts.Select(Said)], answer.Cautions, answer.Outside);
    }

    private static RectifierPart Disc(string id, Rectifier e) =>
        new(id, e.SaturationAmps, e.SlopeVolts, e.SeriesOhms, e.LeakageOhms, 1, false, DiscReverseVolts, 1, DiscBody, null);

    private static RectifierPart DiodePart()
    {
        double Figure(string name) => DiodeFigures.First(f => f.Name == name).Value;
        return new(
            Diode,
            Figure("saturationAmps"),
            Figure("slopeVolts"),
            Figure("seriesOhms"),
            Figure("leakageOhms"),
            1,
            false,
            DiodeReverseVolts,
            2,
            DiodeBody,
            new LeadCooling(10, 12, 1.3, 390, 15, 0.05, 125)
        );
    }

    /// <summary>The disc with what the findings estimate of it put into its figures.</summary>
    private static Rectifier Aged(Rectifier e, FaultProbability? fault) =>
        fault switch
        {
            { Mode.Mode: "high-drop", Size: { } ohms } => e with { SeriesOhms = ohms },
            { Mode.Mode: "leaky", Size: { } ohms } => e with { LeakageOhms = ohms },
            { Mode.Mode: "shorted" } => e with { LeakageOhms = 0.02 },
            { Mode.Mode: "open" } => e with { SeriesOhms = 1e7, LeakageOhms = 1e7 },
            { Mode.Mode: "reversed" } => e with { From = e.To, To = e.From },
            _ => e,
        };

    private static DiscPart Said(RectifierOfPart part) =>
        new(
            part.Id,
            [.. part.Loads.Select(l => (Whistle(l.Whistle), Volts(l.Second)))],
            ValueText.Of(part.Forward.First(f => f.Amps == 2).Volts, Quantity.DcVolts),
            part.Fits switch
            {
                true => $"fits, {Millimetres(part.SpareMillimetres)} to spare",
                false => $"no room, {Millimetres(-part.SpareMillimetres)} short",
                _ => "measure the room",
            },
            Heat(part),
            part.Polarity switch
            {
                "as wanted" => "same way as the old one",
                "exchange its ends" => "the other way round",
                "either" => "either way: ask what the owner runs",
                _ => "not solved",
            },
            part.ReverseEnough switch
            {
                true => "enough",
                false => "too little",
                _ => "not known",
            }
        );

    private static string Whistle(string? call) =>
        call switch
        {
            "silent" or "half pressed only" => call,
            WhistleRelay.Holds => "whistle holds",
            _ => "not solved",
        };

    private static string Volts(RectifierState? second) =>
        second is { } s
            ? $"{ValueText.Of(Math.Abs(s.DcVolts), Quantity.DcVolts)} DC, {ValueText.Of(s.RmsVolts, Quantity.AcVolts)} at the track"
            : "";

    private static string Millimetres(double? spare) => $"{ValueText.Plain(Math.Round(spare ?? 0, 1))} mm";

    private static string Heat(RectifierOfPart part)
    {
        if (part.JunctionCelsius is not { } celsius)
            return "as the old one";
        var leads = part is { LeadRule: "at-most", LeadMillimetres: { } most }
            ? $"; leads at most {ValueText.Plain(Math.Floor(most))} mm"
            : "";
        return $"{ValueText.Plain(Math.Round(celsius))} °C on 12 mm leads{(part.CoolEnough == true ? "" : ", too hot")}{leads}";
    }
}

/// <summary>The room for the part, and which sign of DC the owner's trains need.</summary>
/// <param name="Space">Free length and height [mm]; null where it was not measured.</param>
/// <param name="WantedSign">positive, negative or either.</param>
public sealed record DiscPlace((double Length, double Height)? Space, string WantedSign)
{
    private const double MostMillimetres = 1000;

    /// <summary>As typed; or what is wrong. A room of which one side was not measured is not known.</summary>
    public static (DiscPlace? Place, string Problem) Read(string length, string height, string sign)
    {
        if (length.Trim().Length == 0 || height.Trim().Length == 0)
            return (new(null, sign), "");
        var (l, h) = (ShopEdit.Number(length, 0, MostMillimetres), ShopEdit.Number(height, 0, MostMillimetres));
        return l.Problem.Length > 0 ? (null, $"Length: {l.Problem}")
            : h.Problem.Length > 0 ? (null, $"Height: {h.Problem}")
            : (new((l.Value, h.Value), sign), "");
    }
}

/// <summary>One part in the place of the disc, in words.</summary>
/// <param name="Calls">At each load: what the whistle does, and the volts fully pressed.</param>
/// <param name="Drop">At 2 A.</param>
/// <param name="Room">Whether it fits.</param>
/// <param name="Heat">How warm it gets.</param>
/// <param name="Way">Which way round.</param>
/// <param name="Reverse">Whether it stands the reverse volts.</param>
public sealed record DiscPart(
    string Name,
    ImmutableArray<(string Whistle, string Volts)> Calls,
    string Drop,
    string Room,
    string Heat,
    string Way,
    string Reverse
);
