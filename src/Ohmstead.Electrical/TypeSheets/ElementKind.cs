using System.Collections.Immutable;
using static Ohmstead.Electrical.TypeSheets.FaultChange;
using static Ohmstead.Electrical.TypeSheets.SizeKind;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>What an element is. A new kind begins here: the compiler names every place that must know it (CONTRIBUTING, "A new kind of element").</summary>
public enum ElementKind
{
    /// <summary>A wire.</summary>
    Wire,

    /// <summary>A soldered or clamped joint.</summary>
    Joint,

    /// <summary>A winding on a core.</summary>
    Winding,

    /// <summary>A contact that runs on the turns of a winding or along a resistor: not in the list of elements, but with faults of its own.</summary>
    Slider,

    /// <summary>A thermal breaker.</summary>
    Breaker,

    /// <summary>A disc, plate or diode.</summary>
    Rectifier,

    /// <summary>A resistor or resistance wire.</summary>
    Resistor,

    /// <summary>A capacitor.</summary>
    Capacitor,

    /// <summary>A tungsten lamp.</summary>
    Lamp,

    /// <summary>A contact moved by a selector.</summary>
    Switch,

    /// <summary>A path through insulation.</summary>
    Insulation,
}

/// <summary>
/// What is known of each kind of element: its word in files, how it is read, how far sound ones differ, and how they fail, in a fixed order.
/// Spreads and chances are common practice, no source.
/// </summary>
public static class ElementKinds
{
    private static readonly FaultSpec Open = new("open", Opens, 0.5);
    private static readonly FaultSpec Cold = new("resistive", SetsOhms, 1.5, Continuous, 0.4, 30);

    private static readonly Known Wire = new("wire", (at, e) => Resistive.Read(at, e, usualOhms: 0.004), [Open, Cold], ("ohms", 0.25));
    private static readonly Known Joint = new(
        "joint",
        (at, e) => Resistive.Read(at, e, usualOhms: 0.002),
        [Open, Cold with { Percent = 3 }],
        ("ohms", 0.25)
    );

    private static readonly Known Winding = new(
        "winding",
        WindingReader.Read,
        [new("open", BreaksAtTurn, 1), new("shorted-turns", ShortsTurns, 1.5, WholeTurns, 0.01, 0.06), new("reversed", Reverses, 0.5)],
        ("ohms", 0.08),
        ("turns", 0.006),
        ("leakageHenries", 0.2)
    );

    private static readonly Known Slider = new(
        "slider",
        ReadNone,
        [new("worn", SetsOhms, 25, Continuous, 0.6, 15), new("open", Opens, 4)],
        ("contactOhms", 0.4)
    );

    private static readonly Known Breaker = new(
        "breaker",
        Resistive.ReadBreaker,
        [new("resistive", SetsOhms, 10, Continuous, 0.3, 5), new("open", Opens, 3), new("bypassed", Bypasses, 4)],
        ("ohms", 0.25)
    );

    private static readonly Known Rectifier = new(
        "rectifier",
        TypeSheets.Rectifier.Read,
        [
            new("high-drop", SetsOhms, 30, Continuous, 1, 8),
            new("leaky", Leaks, 20, Continuous, 2, 15),
            new("shorted", Shorts, 6),
            new("open", Opens, 8),
            new("reversed", Reverses, 2),
        ],
        ("saturationAmps", 0.5),
        ("leakageOhms", 0.5),
        ("seriesOhms", 0.3)
    );

    private static readonly Known Resistor = new(
        "resistor",
        ReadResistor,
        [new("open", Opens, 6), new("shorted", Shorts, 2), new("drifted", ScalesOhms, 4, Continuous, 0.4, 2.5)],
        ("ohms", 0.08)
    );

    private static readonly Known Capacitor = new(
        "capacitor",
        TypeSheets.Capacitor.Read,
        [new("open", Opens, 4), new("leaky", Leaks, 8, Continuous, 1e3, 1e6), new("shorted", Shorts, 3)],
        ("farads", 0.2)
    );

    private static readonly Known Lamp = new("lamp", TypeSheets.Lamp.Read, [new("open", Opens, 10)]);

    private static readonly Known Switch = new(
        "switch",
        TypeSheets.Switch.Read,
        [new("resistive", SetsOhms, 12, Continuous, 0.5, 20), new("stuck-open", SticksOpen, 4), new("stuck-closed", SticksClosed, 3)]
    );

    private static readonly Known Insulation = new(
        "insulation",
        (at, e) => Resistive.Read(at, e),
        [new("low", SetsOhms, 5, Continuous, 5e3, 1e6)],
        ("ohms", 0.7)
    );

    /// <summary>Every kind, that of sliders among them.</summary>
    public static ImmutableArray<ElementKind> All { get; } = [.. Enum.GetValues<ElementKind>()];

    /// <summary>The words that a sheet may say of an element, in order of the alphabet.</summary>
    public static IEnumerable<string> Words => All.Where(k => k != ElementKind.Slider).Select(Word).Order(StringComparer.Ordinal);

    /// <summary>The kind's word in files.</summary>
    public static string Word(this ElementKind kind) => Of(kind).Word;

    /// <summary>Reads what its sort alone has.</summary>
    internal static Element Read(this ElementKind kind, JsonCursor at, ElementHead head) => Of(kind).Read(at, head);

    private static Element ReadResistor(JsonCursor at, ElementHead e) =>
        at.Has("sliders") || at.Has("taps") ? WindingReader.Read(at, e) : Resistive.Read(at, e);

    private static Element ReadNone(JsonCursor at, ElementHead e) =>
        throw new System.Diagnostics.UnreachableException("A slider is read with its winding.");

    /// <summary>How it fails.</summary>
    public static ImmutableArray<FaultSpec> Faults(this ElementKind kind) => Of(kind).Faults;

    /// <summary>True for a kind with a path across it that may leak: a short of it is in that path.</summary>
    internal static bool HasPathAcross(this ElementKind kind) => kind.Faults().Any(f => f.Does == Leaks);

    /// <summary>True for a kind that guards what lies behind it, and that somebody may have bypassed: the wiring check looks for that.</summary>
    internal static bool CanBeBypassed(this ElementKind kind) => kind.Faults().Any(f => f.Does == Bypasses);

    /// <summary>The kind of an element, by its word; null for any other word.</summary>
    public static ElementKind? Find(string word)
    {
        foreach (var kind in All)
            if (kind != ElementKind.Slider && kind.Word() == word)
                return kind;
        return null;
    }

    /// <summary>How far a number differs among sound parts [relative standard deviation]; 0 for what does not differ.</summary>
    internal static double UsualSpread(this ElementKind kind, string field)
    {
        foreach (var (name, spread) in Of(kind).Spreads)
            if (name == field)
                return spread;
        return 0;
    }

    private static Known Of(ElementKind kind) =>
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

    private sealed record Known(
        string Word,
        Func<JsonCursor, ElementHead, Element> Read,
        ImmutableArray<FaultSpec> Faults,
        params (string Field, double Spread)[] Spreads
    );
}
