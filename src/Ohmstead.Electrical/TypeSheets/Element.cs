using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>An element of the circuit between two terminals.</summary>
/// <param name="Spread">Relative standard deviations that this element sets itself.</param>
/// <param name="Percents">Chances of fault modes [%] that this element sets itself, by mode.</param>
public abstract record Element(
    string Id,
    ElementKind Kind,
    string From,
    string To,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
)
{
    /// <summary>How much of each spread is doubt about the kind, on a drafted sheet.</summary>
    public SpreadOverrides KindError { get; init; } = SpreadOverrides.None;

    /// <summary>The color of a wire, in words; empty where the sheet does not say.</summary>
    public string Colour { get; init; } = "";

    /// <summary>The part as read, unknown fields included; what is written back starts from it.</summary>
    internal AsRead AsRead { get; init; } = AsRead.Nothing;

    /// <summary>The names of the contacts of a winding, or nothing.</summary>
    public virtual IEnumerable<string> OtherTerminals => [];

    /// <summary>What is to be said of each sort of element: a new sort is a new argument, and the compiler names all who must give it.</summary>
    public T Match<T>(
        Func<Resistive, T> resistive,
        Func<Winding, T> winding,
        Func<Lamp, T> lamp,
        Func<Rectifier, T> rectifier,
        Func<Switch, T> contact,
        Func<Capacitor, T> capacitor
    ) =>
        this switch
        {
            Resistive r => resistive(r),
            Winding w => winding(w),
            Lamp l => lamp(l),
            Rectifier r => rectifier(r),
            Switch s => contact(s),
            Capacitor c => capacitor(c),
            _ => throw new System.Diagnostics.UnreachableException(GetType().Name),
        };

    /// <summary>What is to be done with each sort of element.</summary>
    public void Match(
        Action<Resistive> resistive,
        Action<Winding> winding,
        Action<Lamp> lamp,
        Action<Rectifier> rectifier,
        Action<Switch> contact,
        Action<Capacitor> capacitor
    ) =>
        Match<Action>(
            r => () => resistive(r),
            w => () => winding(w),
            l => () => lamp(l),
            r => () => rectifier(r),
            s => () => contact(s),
            c => () => capacitor(c)
        )();
}

/// <summary>A wire, joint, resistor, breaker or insulation path: a resistance [Ω].</summary>
public sealed record Resistive(
    string Id,
    ElementKind Kind,
    string From,
    string To,
    double Ohms,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, Kind, From, To, Spread, Percents)
{
    /// <summary>What a breaker is rated to carry for hours [A]; 0 where the sheet does not say, and of any other part.</summary>
    public double RatedAmps { get; init; }
}

/// <summary>
/// A winding on a core, its dotted end at <see cref="Element.From"/>. Resistance [Ω at 20 °C] and leakage inductance [H]
/// are spread evenly over the turns. Or the wire of a resistor with taps or sliders: on no core, of kind resistor, its turns the
/// parts of its length in which taps and sliders count.
/// </summary>
public sealed record Winding(
    string Id,
    string From,
    string To,
    string Core,
    double Turns,
    double Ohms,
    double LeakageHenries,
    ImmutableArray<Tap> Taps,
    ImmutableArray<Slider> Sliders,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Winding, From, To, Spread, Percents)
{
    /// <inheritdoc/>
    public override IEnumerable<string> OtherTerminals => Taps.Select(t => t.To).Concat(Sliders.Select(s => s.To));

    /// <summary>What it carries for hours [A]; 0 where the sheet does not say.</summary>
    public double MostAmps { get; init; }

    /// <summary>False for the wire of a resistor, in which nothing is induced.</summary>
    public bool IsOnCore => Kind == ElementKind.Winding;
}

/// <summary>A terminal at a turn, counted from the winding's dotted end.</summary>
public sealed record Tap(double Turn, string To);

/// <summary>
/// A contact that runs on bared turns: at fromTurn + x·(toTurn − fromTurn) for the control's position x, through
/// <paramref name="ContactOhms"/>; with <paramref name="BridgesTurns"/> 1 it lies on two turns, half a turn to each side,
/// through twice that resistance each.
/// </summary>
public sealed record Slider(
    string Id,
    string Control,
    double FromTurn,
    double ToTurn,
    string To,
    double ContactOhms,
    int BridgesTurns,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
)
{
    /// <summary>How much of its spread is doubt about the kind, on a drafted sheet.</summary>
    public SpreadOverrides KindError { get; init; } = SpreadOverrides.None;

    /// <summary>What it carries for hours [A]; 0 where the sheet does not say.</summary>
    public double MostAmps { get; init; }

    /// <summary>Below this position of the control it touches nothing.</summary>
    public double OffBelow { get; init; }

    /// <summary>Above this position of the control it touches nothing.</summary>
    public double OffAbove { get; init; } = 1;

    /// <summary>True where it touches nothing.</summary>
    /// <param name="position">Of the control, 0 to 1.</param>
    public bool IsOff(double position) => position < OffBelow || position > OffAbove;
}

/// <summary>A tungsten lamp of rated voltage [V] and current [A].</summary>
public sealed record Lamp(
    string Id,
    string From,
    string To,
    double Volts,
    double Amps,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Lamp, From, To, Spread, Percents);

/// <summary>A capacitor [F].</summary>
public sealed record Capacitor(
    string Id,
    string From,
    string To,
    double Farads,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Capacitor, From, To, Spread, Percents);

/// <summary>
/// A rectifier that conducts from <see cref="Element.From"/> to <see cref="Element.To"/>: a junction in series with
/// <paramref name="SeriesOhms"/>, and <paramref name="LeakageOhms"/> across both.
/// </summary>
public sealed record Rectifier(
    string Id,
    string From,
    string To,
    double SaturationAmps,
    double SlopeVolts,
    double SeriesOhms,
    double LeakageOhms,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Rectifier, From, To, Spread, Percents);

/// <summary>A contact that is closed [<paramref name="Ohms"/>] in some positions of a selector and open [<paramref name="OpenOhms"/>] in the others.</summary>
public sealed record Switch(
    string Id,
    string From,
    string To,
    string Control,
    ImmutableArray<string> ClosedIn,
    double Ohms,
    double OpenOhms,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
) : Element(Id, ElementKind.Switch, From, To, Spread, Percents)
{
    /// <summary>What it carries for hours [A]; 0 where the sheet does not say.</summary>
    public double MostAmps { get; init; }
}
