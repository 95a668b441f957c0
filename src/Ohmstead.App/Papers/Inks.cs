using Ohmstead.Workshop.Job;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>The colors of a page.</summary>
internal static class Inks
{
    public static XColor Text { get; } = XColor.FromArgb(0x23, 0x26, 0x2b);

    public static XColor Soft { get; } = XColor.FromArgb(0x5b, 0x5f, 0x66);

    public static XColor Line { get; } = XColor.FromArgb(0xc9, 0xbf, 0xae);

    public static XColor Faint { get; } = XColor.FromArgb(0xf4, 0xef, 0xe6);

    public static XColor Copper { get; } = XColor.FromArgb(0x9a, 0x4a, 0x1c);

    private static readonly XColor Stop = XColor.FromArgb(0xa3, 0x26, 0x1d);

    private static readonly XColor Look = XColor.FromArgb(0x8a, 0x5a, 0x00);

    private static readonly XColor Good = XColor.FromArgb(0x1f, 0x6b, 0x4f);

    /// <summary>The color that goes with a weight.</summary>
    public static XColor Of(Weight weight) =>
        weight switch
        {
            Weight.Good => Good,
            Weight.Look => Look,
            Weight.Stop => Stop,
            Weight.Absent => Soft,
            _ => Text,
        };
}
