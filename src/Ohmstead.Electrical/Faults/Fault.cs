using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Faults;

/// <summary>A fault of a unit: a mode and its size (0 when the mode has none; for an open winding the turn of the break).</summary>
public readonly record struct Fault(FaultMode Mode, double Size)
{
    private const double BypassOhms = 1e-3;
    private const double ShortedResistorOhms = 0.01;
    private const double ShortedRectifierOhms = 0.02;

    /// <summary>Reads <c>element:mode</c> or <c>element:mode=value</c>; a reason when it cannot be read.</summary>
    public static bool TryParse(string text, FaultCatalogue catalogue, out Fault fault, out bool hasSize, out string reason)
    {
        var cut = text.IndexOf('=', StringComparison.Ordinal);
        var name = cut < 0 ? text : text[..cut];
        (fault, hasSize, reason) = (default, cut >= 0, "");
        if (catalogue.Find(name) is not { } mode)
        {
            reason =
                $"\"{name}\" is no fault of this sheet; element:mode[=value] is expected{(catalogue.Modes is [var first, ..] ? $", for example {first.Name}" : "; the sheet has no element")}";
            return false;
        }
        var size = mode.MiddleSize;
        if (
            hasSize
            && !(
                double.TryParse(text[(cut + 1)..], NumberStyles.Float, CultureInfo.InvariantCulture, out size)
                && double.IsFinite(size)
                && size >= 0
                && size <= 1e12
            )
        )
        {
            reason = $"\"{text[(cut + 1)..]}\" is no size; a number from 0 to 1e12 is expected";
            return false;
        }
        fault = new Fault(mode, size);
        return true;
    }

    /// <summary>Changes the numbers of a unit as this fault does.</summary>
    public void ApplyTo(UnitValues values)
    {
        ApplyTo(values, Mode.Target);
        foreach (var other in Mode.OtherTargets)
            ApplyTo(values, other);
    }

    private void ApplyTo(UnitValues values, int n)
    {
        switch (Mode.Spec.Does)
        {
            case FaultChange.SetsOhms:
                Ohms(values, n) = Size;
                break;
            case FaultChange.ScalesOhms:
                Ohms(values, n) *= Size;
                break;
            case FaultChange.Opens when Mode.Kind == ElementKind.Lamp:
                values.Flag[n] = true;
                break;
            case FaultChange.Opens when Mode.Kind == ElementKind.Rectifier:
                values.Ohms[n] = values.Second[n] = BranchValues.OpenOhms;
                break;
            case FaultChange.Opens:
                Ohms(values, n) = BranchValues.OpenOhms;
                break;
            case FaultChange.Bypasses:
                values.Ohms[n] = BypassOhms;
                break;
            case FaultChange.Shorts when Mode.Kind == ElementKind.Rectifier:
                values.Second[n] = ShortedRectifierOhms;
                break;
            case FaultChange.Shorts when Mode.Kind.HasPathAcross():
                values.Second[n] = ShortedResistorOhms;
                break;
            case FaultChange.Shorts:
                values.Ohms[n] = ShortedResistorOhms;
                break;
            case FaultChange.Leaks:
                values.Second[n] = Size;
                break;
            case FaultChange.BreaksAtTurn:
                values.BrokenAtTurn[n] = Size;
                break;
            case FaultChange.ShortsTurns:
                values.ShortedTurns[n] = Size;
                break;
            case FaultChange.Reverses:
                values.Flag[n] = true;
                break;
            case FaultChange.SticksOpen:
                values.Stuck[n] = 1;
                break;
            case FaultChange.SticksClosed:
                values.Stuck[n] = 2;
                break;
            default:
                throw new System.Diagnostics.UnreachableException(Mode.Name);
        }
    }

    private ref double Ohms(UnitValues values, int n) => ref (Mode.IsSlider ? values.ContactOhms : values.Ohms)[n];

    /// <summary>True when this fault exchanges the ends of a winding with taps or sliders, which lays the circuit out anew.</summary>
    public bool ReversesChain(UnitModel model) =>
        Mode is { Kind: ElementKind.Winding, Spec.Does: FaultChange.Reverses } && ReversedChains(model).Any();

    /// <summary>The windings with taps or sliders whose ends a fault that exchanges ends exchanges.</summary>
    internal IEnumerable<int> ReversedChains(UnitModel model) =>
        Mode.OtherTargets.Prepend(Mode.Target).Where(n => model.Sheet.Elements[n] is Winding w && w.Taps.Length + w.Sliders.Length > 0);

    /// <inheritdoc/>
    public override string ToString() =>
        Mode.Size == SizeKind.None && Size == 0 ? Mode.Name : string.Create(CultureInfo.InvariantCulture, $"{Mode.Name}={Size:G4}");
}
