using System.Collections.Immutable;

namespace Ohmstead.Workshop.Drawing;

/// <summary>Marks that belong together.</summary>
/// <param name="Id">Id of the element, terminal or core.</param>
/// <param name="Title">In words, for those who point at it or cannot see it.</param>
/// <param name="Pins">Where an element is connected: the terminal's id and the place.</param>
public sealed record Group(GroupKind Kind, string Id, string Title, ImmutableArray<Pin> Pins, ImmutableArray<Mark> Marks)
    : Mark(Role.Symbol)
{
    /// <summary>How loudly it is drawn.</summary>
    public Tone Tone { get; init; }

    /// <inheritdoc/>
    public override Box Extent => Marks.Select(m => m.Extent).Aggregate((a, b) => a.With(b));

    /// <summary>This group and those in it.</summary>
    public IEnumerable<Group> AllGroups => Marks.OfType<Group>().SelectMany(g => g.AllGroups).Prepend(this);
}

/// <summary>Where an element meets the terminal <paramref name="Terminal"/>.</summary>
public readonly record struct Pin(string Terminal, Spot At);

/// <summary>How loudly a group is drawn.</summary>
public enum Tone
{
    /// <summary>As usual.</summary>
    Plain,

    /// <summary>On the path that is measured: dark and heavy.</summary>
    Measured,

    /// <summary>Beside it: pale.</summary>
    Hushed,
}

/// <summary>What a group of marks stands for.</summary>
public enum GroupKind
{
    /// <summary>An element of the circuit, or a slider.</summary>
    Element,

    /// <summary>A terminal.</summary>
    Terminal,

    /// <summary>The wires of one terminal.</summary>
    Net,

    /// <summary>A core.</summary>
    Core,

    /// <summary>What is laid over: a probe, a value.</summary>
    Overlay,
}
