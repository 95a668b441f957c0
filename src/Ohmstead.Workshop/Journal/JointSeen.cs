using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>The wire ends on a joint, seen on a photo; what was seen last of a joint in the same state counts.</summary>
/// <param name="As">As found or as left.</param>
/// <param name="Terminal">The terminal of the type sheet.</param>
/// <param name="Ends">The wire ends on it; none when nothing sits there.</param>
/// <param name="Photo">Hash of the photo; empty for none.</param>
/// <param name="X">Place across [0..1].</param>
/// <param name="Y">Place down [0..1].</param>
public sealed record JointSeen(WiringState As, string Terminal, ImmutableArray<WireEnd> Ends, string Photo, double X, double Y) : Fact;

/// <summary>An end of a wire.</summary>
/// <param name="Id">Element and end: "w-0.to", "main.tap-2".</param>
/// <param name="Colour">As seen; may be empty.</param>
public sealed record WireEnd(string Id, string Colour);

/// <summary>Which wiring is recorded.</summary>
public enum WiringState
{
    /// <summary>Before anything was unsoldered.</summary>
    Found,

    /// <summary>As it goes back to its owner.</summary>
    Left,
}

/// <summary>The record of a wiring is closed: nothing is changed in it any more.</summary>
public sealed record WiringFrozen(WiringState As) : Fact;
