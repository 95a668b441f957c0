namespace Ohmstead.Workshop.Journal;

/// <summary>A photo was taken.</summary>
/// <param name="Photo">SHA-256 of the file, lower-case hexadecimal.</param>
/// <param name="Title">What it shows; may be empty.</param>
/// <param name="About">Id of the element, reading or look-over item it belongs to; empty for the unit.</param>
public sealed record PhotoAdded(string Photo, string Title, string About) : Fact;

/// <summary>Damage marked at a place on a photo.</summary>
/// <param name="Photo">Hash of the photo.</param>
/// <param name="X">Place across [0..1].</param>
/// <param name="Y">Place down [0..1].</param>
public sealed record DamagePinned(string Photo, double X, double Y, string Words) : Fact;
