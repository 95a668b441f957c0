using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Faults;

/// <summary>One way in which one element of a sheet can fail.</summary>
/// <param name="Number">Place in the catalogue.</param>
/// <param name="Element">Id of the element or slider.</param>
/// <param name="Target">Index of the element, or of the slider.</param>
/// <param name="IsSlider">True for a slider.</param>
/// <param name="Kind">Kind of the element; "slider" for a slider.</param>
/// <param name="Percent">Chance in an unserviced unit [%]: common practice, no source, editable.</param>
/// <param name="Size">How its size is given.</param>
/// <param name="Min">Smallest size; equal to <paramref name="Max"/> when there is nothing to choose.</param>
/// <param name="Max">Largest size.</param>
public sealed record FaultMode(
    int Number,
    string Element,
    int Target,
    bool IsSlider,
    string Kind,
    string Mode,
    double Percent,
    SizeKind Size,
    double Min,
    double Max
)
{
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
