using System.Collections.Immutable;
using System.Text.Json.Nodes;

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

    /// <summary>Puts what its sort alone has into the JSON of an element.</summary>
    internal abstract void Put(JsonObject json);

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
}

/// <summary>What every element has, as read.</summary>
internal readonly record struct ElementHead(
    string Id,
    ElementKind Kind,
    string From,
    string To,
    SpreadOverrides Spread,
    ImmutableDictionary<string, double> Percents
);
