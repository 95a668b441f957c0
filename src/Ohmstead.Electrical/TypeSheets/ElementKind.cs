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
