namespace Ohmstead.Electrical.Circuits;

/// <summary>A branch between two nodes. <paramref name="Index"/> is the element, slider, lamp or rectifier.</summary>
/// <param name="IsFirst">The part of a winding that begins at its end of turn 0.</param>
internal readonly record struct Branch(int A, int B, BranchKind Kind, int Index, double X = 0, double Y = 0, bool IsFirst = false)
{
    /// <summary>True where its reactance may cancel another's: what comes of it does not change smoothly from harmonic to harmonic.</summary>
    public bool IsCapacitive => Kind == BranchKind.Capacitor;

    /// <summary>True where its impedance depends on the frequency.</summary>
    public bool IsReactive =>
        Kind switch
        {
            BranchKind.Segment or BranchKind.Capacitor => true,
            BranchKind.Load => Y > 0,
            BranchKind.Element
            or BranchKind.Contact
            or BranchKind.Slider
            or BranchKind.Lamp
            or BranchKind.Junction
            or BranchKind.Series
            or BranchKind.Leakage => false,
        };
}

/// <summary>What a branch of a reading's circuit is.</summary>
internal enum BranchKind
{
    /// <summary>A resistive element.</summary>
    Element,

    /// <summary>A switch; <see cref="Branch.X"/> is 1 where the control closes it.</summary>
    Contact,

    /// <summary>A slider's contact; <see cref="Branch.X"/> times its resistance.</summary>
    Slider,

    /// <summary>A part of a winding from turn <see cref="Branch.X"/> to turn <see cref="Branch.Y"/>.</summary>
    Segment,

    /// <summary>A tungsten lamp, by number.</summary>
    Lamp,

    /// <summary>The junction of a rectifier, by number.</summary>
    Junction,

    /// <summary>The series resistance of a rectifier.</summary>
    Series,

    /// <summary>The leakage of a rectifier.</summary>
    Leakage,

    /// <summary>A capacitor.</summary>
    Capacitor,

    /// <summary>A load: <see cref="Branch.X"/> ohms and <see cref="Branch.Y"/> henries in series.</summary>
    Load,
}

/// <summary>A lamp in a reading's circuit; <paramref name="Element"/> is −1 for one in the supply.</summary>
internal readonly record struct LampPlace(int A, int B, int Element, double Volts, double Amps);

/// <summary>A junction in a reading's circuit, between the rectifier's <c>from</c> and its inner node.</summary>
internal readonly record struct JunctionPlace(int A, int B, int Element, double SlopeVolts);
