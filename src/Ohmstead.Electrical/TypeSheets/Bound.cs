namespace Ohmstead.Electrical.TypeSheets;

/// <summary>The least and the most that a figure may be.</summary>
internal readonly record struct Bound(double Least, double Most)
{
    /// <summary>True for a figure between them.</summary>
    public bool Holds(double value) => value >= Least && value <= Most;

    /// <summary>What would be right where a figure does not lie between them.</summary>
    public string Expected => $"a number from {JsonCursor.Show(Least)} to {JsonCursor.Show(Most)} is expected";
}
