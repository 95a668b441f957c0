namespace Ohmstead.Workshop.Cautions;

/// <summary>What the hand is about to do.</summary>
public enum Act
{
    /// <summary>Open the case, or take a part off.</summary>
    TakeOff,

    /// <summary>Make or undo a soldered joint.</summary>
    Solder,

    /// <summary>Wipe, brush or burnish.</summary>
    Clean,

    /// <summary>Put another part in its place.</summary>
    Replace,

    /// <summary>Drill, cut, crush or file.</summary>
    Cut,

    /// <summary>Read with the insulation tester.</summary>
    TestInsulation,

    /// <summary>Drive direct current through a part.</summary>
    FeedDirect,

    /// <summary>Feed the plug from the low-voltage supply.</summary>
    FeedLow,

    /// <summary>Put mains on the unit, the case closed.</summary>
    FeedMains,

    /// <summary>Put mains on the unit, the case open.</summary>
    FeedMainsOpen,

    /// <summary>Put a lamp in series with the mains.</summary>
    SeriesLamp,

    /// <summary>Bring the volts up with a variable transformer.</summary>
    BringUp,

    /// <summary>Hang a load on the posts.</summary>
    Load,

    /// <summary>Use it on a layout.</summary>
    Run,
}
