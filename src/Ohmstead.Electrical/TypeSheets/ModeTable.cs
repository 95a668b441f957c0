using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>The fault modes of each kind of element, in a fixed order. Chances are common practice, no source.</summary>
public static class ModeTable
{
    /// <summary>The kind under which a winding's sliders are listed.</summary>
    public const string SliderKind = "slider";

    private static readonly ModeSpec Open = new("open", 0.5);
    private static readonly ModeSpec ColdWire = new("resistive", 1.5, SizeKind.Continuous, 0.4, 30);

    private static readonly ImmutableDictionary<string, ImmutableArray<ModeSpec>> ByKind = new Dictionary<string, ImmutableArray<ModeSpec>>(
        StringComparer.Ordinal
    )
    {
        ["wire"] = [Open, ColdWire],
        ["joint"] = [Open, ColdWire with { Percent = 3 }],
        ["winding"] = [new("open", 1), new("shorted-turns", 1.5, SizeKind.WholeTurns, 0.01, 0.06), new("reversed", 0.5)],
        [SliderKind] = [new("worn", 25, SizeKind.Continuous, 0.6, 15), new("open", 4)],
        ["breaker"] = [new("resistive", 10, SizeKind.Continuous, 0.3, 5), new("open", 3), new("bypassed", 4)],
        ["rectifier"] =
        [
            new("high-drop", 30, SizeKind.Continuous, 1, 8),
            new("leaky", 20, SizeKind.Continuous, 2, 15),
            new("shorted", 6),
            new("open", 8),
            new("reversed", 2),
        ],
        ["resistor"] = [new("open", 6), new("shorted", 2), new("drifted", 4, SizeKind.Continuous, 0.4, 2.5)],
        ["lamp"] = [new("open", 10)],
        ["switch"] = [new("resistive", 12, SizeKind.Continuous, 0.5, 20), new("stuck-open", 4), new("stuck-closed", 3)],
        ["insulation"] = [new("low", 5, SizeKind.Continuous, 5e3, 1e6)],
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The kinds of element that a sheet may hold.</summary>
    public static IEnumerable<string> ElementKinds => ByKind.Keys.Where(k => k != SliderKind).Order(StringComparer.Ordinal);

    /// <summary>True for a kind of element.</summary>
    public static bool IsElementKind(string kind) => kind != SliderKind && ByKind.ContainsKey(kind);

    /// <summary>The modes of a kind.</summary>
    public static ImmutableArray<ModeSpec> Of(string kind) => ByKind[kind];
}

/// <summary>How the size of a fault is given.</summary>
public enum SizeKind
{
    /// <summary>The mode has no size.</summary>
    None,

    /// <summary>A resistance or a factor, log-uniform over its range.</summary>
    Continuous,

    /// <summary>Whole turns, at least 1, from 1 % to 6 % of the winding.</summary>
    WholeTurns,
}

/// <summary>One way in which a kind of element fails.</summary>
/// <param name="Percent">Chance of it in an unserviced unit [%]: common practice, no source; a sheet may override it.</param>
/// <param name="Min">Smallest size: Ω, a factor, or a share of the turns.</param>
/// <param name="Max">Largest size.</param>
public sealed record ModeSpec(string Mode, double Percent, SizeKind Size = SizeKind.None, double Min = 0, double Max = 0);
