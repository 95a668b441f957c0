using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Circuits;

/// <summary>What each sort of element is in a circuit: its numbers, which of them differ from unit to unit, and its branch.</summary>
internal static class ElementNumbers
{
    /// <summary>What leaks through a sound capacitor [Ω].</summary>
    private const double NoLeakOhms = 1e18;

    /// <summary>Its numbers as <see cref="UnitValues"/> keeps them.</summary>
    public static (double Ohms, double Second, double Third) Of(Element element) =>
        element.Match<(double, double, double)>(
            resistive: r => (r.Ohms, 0, 0),
            winding: w => (w.Ohms, w.LeakageHenries, w.IsOnCore ? w.Turns : 0),
            lamp: _ => (0, 0, 0),
            rectifier: d => (d.SeriesOhms, d.LeakageOhms, d.SaturationAmps),
            contact: s => (s.Ohms, s.OpenOhms, 0),
            capacitor: c => (0, NoLeakOhms, c.Farads)
        );

    /// <summary>The numbers that may differ from unit to unit, by their names in files.</summary>
    public static ImmutableArray<(ParameterKind Kind, string Field, double Nominal)> Spread(Element element) =>
        element.Match<ImmutableArray<(ParameterKind, string, double)>>(
            resistive: r => [(ParameterKind.Ohms, "ohms", r.Ohms)],
            winding: w =>
                [
                    (ParameterKind.Ohms, "ohms", w.Ohms),
                    (ParameterKind.Turns, "turns", w.Turns),
                    (ParameterKind.LeakageHenries, "leakageHenries", w.LeakageHenries),
                ],
            lamp: _ => [],
            rectifier: d =>
                [
                    (ParameterKind.SaturationAmps, "saturationAmps", d.SaturationAmps),
                    (ParameterKind.SeriesOhms, "seriesOhms", d.SeriesOhms),
                    (ParameterKind.LeakageOhms, "leakageOhms", d.LeakageOhms),
                ],
            contact: _ => [],
            capacitor: c => [(ParameterKind.Farads, "farads", c.Farads)]
        );

    /// <summary>What an element with one branch, from end to end, is there; null for one that is laid in several.</summary>
    public static BranchKind? OnlyBranch(Element element) =>
        element.Match<BranchKind?>(
            resistive: _ => BranchKind.Element,
            winding: _ => null,
            lamp: _ => null,
            rectifier: _ => null,
            contact: _ => BranchKind.Contact,
            capacitor: _ => BranchKind.Capacitor
        );

    /// <summary>Where <see cref="UnitValues"/> keeps a number.</summary>
    public static ref double Slot(UnitValues values, Parameter p)
    {
        switch (p.Kind)
        {
            case ParameterKind.Ohms or ParameterKind.SeriesOhms:
                return ref values.Ohms[p.Index];
            case ParameterKind.LeakageHenries or ParameterKind.LeakageOhms:
                return ref values.Second[p.Index];
            case ParameterKind.Turns or ParameterKind.SaturationAmps or ParameterKind.Farads:
                return ref values.Third[p.Index];
            case ParameterKind.ContactOhms:
                return ref values.ContactOhms[p.Index];
            case ParameterKind.LossOhms:
                return ref values.LossOhms[p.Index];
            case ParameterKind.Excitation:
                return ref values.Excitation[p.Index];
            default:
                throw new System.Diagnostics.UnreachableException(p.Path);
        }
    }
}

/// <summary>What a spread parameter is of.</summary>
public enum ParameterKind
{
    /// <summary>Resistance of a wire, joint, resistor, breaker, insulation path or winding.</summary>
    Ohms,

    /// <summary>Turns of a winding, its taps and sliders together.</summary>
    Turns,

    /// <summary>Leakage inductance of a winding.</summary>
    LeakageHenries,

    /// <summary>Contact resistance of a slider.</summary>
    ContactOhms,

    /// <summary>Saturation current of a junction.</summary>
    SaturationAmps,

    /// <summary>Series resistance of a rectifier.</summary>
    SeriesOhms,

    /// <summary>Leakage resistance of a rectifier.</summary>
    LeakageOhms,

    /// <summary>Capacitance of a capacitor.</summary>
    Farads,

    /// <summary>Loss resistance of a core.</summary>
    LossOhms,

    /// <summary>Magnetising current of a core, all points of its table together.</summary>
    Excitation,
}
