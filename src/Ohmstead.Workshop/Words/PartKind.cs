using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Words;

/// <summary>What the bench knows of a kind of part, whatever it does on a sheet.</summary>
/// <param name="AreEndsSoldered">Its ends are wire ends; where not, its lugs are the joints themselves.</param>
internal sealed record PartKind(bool AreEndsSoldered)
{
    private static readonly PartKind Wire = new(AreEndsSoldered: true) { TradeWords = ["cord", "pigtail"] };
    private static readonly PartKind Joint = new(AreEndsSoldered: false);
    private static readonly PartKind Slider = new(AreEndsSoldered: false) { TradeWords = ["roller", "shoe", "brush"] };
    private static readonly PartKind Breaker = new(AreEndsSoldered: false) { TradeWords = ["breaker"] };
    private static readonly PartKind Switch = new(AreEndsSoldered: false) { TradeWords = ["switch", "contact", "button"] };
    private static readonly PartKind Lamp = new(AreEndsSoldered: true) { TradeWords = ["lamp", "pilot"] };
    private static readonly PartKind Resistor = new(AreEndsSoldered: true) { TradeWords = ["resistor", "resistance", "dropper"] };

    private static readonly PartKind Winding = new(AreEndsSoldered: true)
    {
        TradeWords = ["primary", "main", "boost", "secondary", "winding", "coil"],
    };

    private static readonly PartKind Rectifier = new(AreEndsSoldered: true)
    {
        TradeWords = ["disc", "plate", "diode", "rectifier", "stack"],
    };

    private static readonly PartKind Capacitor = new(AreEndsSoldered: true)
    {
        TradeWords = ["capacitor", "condenser", "suppressor"],
        IsOpen = true,
        Says = "no DC gets through",
    };

    private static readonly PartKind Insulation = new(AreEndsSoldered: false) { IsOpen = true, Says = "nothing should get through" };

    /// <summary>A part whose id has one of these words in it is called by its id in words: <c>main-winding</c>, <c>roller-2</c>.</summary>
    public ImmutableArray<string> TradeWords { get; private init; } = [];

    /// <summary>Nothing should come through a sound one when it is read with direct current.</summary>
    public bool IsOpen { get; private init; }

    /// <summary>What is said of any of them on a path; empty where that hangs on the part.</summary>
    public string Says { get; private init; } = "";

    /// <summary>What is known of a kind.</summary>
    public static PartKind Of(ElementKind kind) =>
        kind switch
        {
            ElementKind.Wire => Wire,
            ElementKind.Joint => Joint,
            ElementKind.Winding => Winding,
            ElementKind.Slider => Slider,
            ElementKind.Breaker => Breaker,
            ElementKind.Rectifier => Rectifier,
            ElementKind.Resistor => Resistor,
            ElementKind.Capacitor => Capacitor,
            ElementKind.Lamp => Lamp,
            ElementKind.Switch => Switch,
            ElementKind.Insulation => Insulation,
        };

    /// <summary>The figures of an element, by their names.</summary>
    public static IEnumerable<(string Name, string Value)> Figures(TypeSheet sheet, Element element) =>
        element.Match<IEnumerable<(string, string)>>(
            winding: w =>
                [
                    .. w.IsOnCore
                        ?
                        [
                            ("turns", ValueText.Plain(w.Turns)),
                            ("resistance at 20 °C", Ohms(w.Ohms)),
                            ("core", PartNames.Core(sheet, w.Core)),
                            .. w.Taps.Select(t => (PartNames.Terminal(sheet, t.To), "turn " + ValueText.Plain(t.Turn))),
                        ]
                        : (IEnumerable<(string, string)>)
                            [("resistance", Ohms(w.Ohms)), .. w.Taps.Select(t => (PartNames.Terminal(sheet, t.To), Along(w, t.Turn)))],
                    .. w.Sliders.Select(s => (w.IsOnCore ? "roller or shoe" : "brush", PartNames.Of(sheet, s.Id))),
                ],
            lamp: l => [("rated", ValueText.Of(l.Volts, Quantity.AcVolts)), ("draws", ValueText.Of(l.Amps, Quantity.AcAmps))],
            rectifier: r => [("in series", Ohms(r.SeriesOhms)), ("leakage path", Ohms(r.LeakageOhms))],
            contact: s =>
                [
                    (
                        "closed when",
                        $"{PartNames.Control(sheet, s.Control)}: {string.Join(" or ", s.ClosedIn.Select(p => PartNames.Position(sheet, s.Control, p)))}"
                    ),
                    ("closed", Ohms(s.Ohms)),
                    ("open", Ohms(s.OpenOhms)),
                ],
            capacitor: c => [("capacitance", $"{ValueText.Number(c.Farads * 1e6)} µF")],
            resistive: r => [("resistance", Ohms(r.Ohms))]
        );

    /// <summary>A place on the wire of a resistor.</summary>
    public static string Along(Winding wire, double turn) => $"{ValueText.Percent(turn / wire.Turns)} of the wire";

    private static string Ohms(double ohms) => ValueText.Of(ohms, Quantity.Ohms);
}
