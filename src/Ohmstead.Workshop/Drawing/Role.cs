namespace Ohmstead.Workshop.Drawing;

/// <summary>What a mark is for. Writers decide on colour and weight from it; the drawing itself knows none.</summary>
public enum Role
{
    /// <summary>A connection without resistance of its own.</summary>
    Wire,

    /// <summary>The sign of an element.</summary>
    Symbol,

    /// <summary>A filled part of a sign, or the dot where wires meet.</summary>
    Solid,

    /// <summary>The open circle of a terminal.</summary>
    Terminal,

    /// <summary>The bars of a core.</summary>
    Core,

    /// <summary>The name of an element or terminal.</summary>
    Label,

    /// <summary>A name that matters less: wires, joints, terminals inside the unit.</summary>
    Small,

    /// <summary>A value, a state, a band.</summary>
    Value,

    /// <summary>Where the red lead goes.</summary>
    ProbeRed,

    /// <summary>Where the black lead goes.</summary>
    ProbeBlack,

    /// <summary>The word on a lead's flag.</summary>
    ProbeText,

    /// <summary>Perhaps at fault.</summary>
    SuspectLow,

    /// <summary>More likely at fault than most.</summary>
    SuspectMedium,

    /// <summary>Very likely at fault.</summary>
    SuspectHigh,

    /// <summary>The luggage tag of a finding: its card.</summary>
    Tag,

    /// <summary>The thick edge of that card.</summary>
    TagEdge,

    /// <summary>Taken out or of no part in what is shown.</summary>
    Dimmed,

    /// <summary>Not seen: takes the finger.</summary>
    Hit,
}
