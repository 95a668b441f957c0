using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Faults;

/// <summary>One way in which one element of a sheet, or several together, can fail.</summary>
/// <param name="Number">Place in the catalogue.</param>
/// <param name="Element">Id of the element or slider, or of the fault that parts share.</param>
/// <param name="Target">Index of the element, or of the slider; the first of those that share it.</param>
/// <param name="Spec">How it fails: chance and range of the size as this sheet has them.</param>
public sealed record FaultMode(int Number, string Element, int Target, ElementKind Kind, FaultSpec Spec)
{
    /// <summary>The parts that have it together; empty for a fault of one part.</summary>
    public ImmutableArray<string> SharedBy { get; init; } = [];

    /// <summary>Their indexes after <see cref="Target"/>.</summary>
    internal ImmutableArray<int> OtherTargets { get; init; } = [];

    /// <summary>Their numbers in <see cref="FaultCatalogue.ElementOf"/>: none of them has a fault of its own at once.</summary>
    internal ImmutableArray<int> SharedElements { get; init; } = [];

    /// <summary>True for a fault that several parts have together.</summary>
    public bool IsShared => !SharedBy.IsEmpty;

    /// <summary>The parts that have it, one or several.</summary>
    public ImmutableArray<string> Parts => IsShared ? SharedBy : [Element];

    /// <summary>True for a slider.</summary>
    public bool IsSlider => Kind == ElementKind.Slider;

    /// <summary>The mode's name in files.</summary>
    public string Mode => Spec.Mode;

    /// <summary>Chance in an unserviced unit [%].</summary>
    public double Percent => Spec.Percent;

    /// <summary>How its size is given.</summary>
    public SizeKind Size => Spec.Size;

    /// <summary>Smallest size; equal to <see cref="Max"/> when there is nothing to choose.</summary>
    public double Min => Spec.Min;

    /// <summary>Largest size.</summary>
    public double Max => Spec.Max;

    /// <summary>The name <c>element:mode</c>.</summary>
    public string Name => $"{Element}:{Mode}";

    /// <summary>True when its size must be estimated.</summary>
    public bool HasSize => Max > Min;

    /// <summary>The middle of its range on a logarithmic scale; 0 for a mode without a size.</summary>
    public double MiddleSize => Size == SizeKind.None ? 0 : SizeAt(0.5);

    /// <summary>The size at a share [0..1] of its logarithmic range; whole for turns.</summary>
    public double SizeAt(double share)
    {
        var size = Min * Math.Pow(Max / Min, share);
        return Size == SizeKind.WholeTurns ? Math.Round(size) : size;
    }

    /// <inheritdoc/>
    public override string ToString() => Name;
}
