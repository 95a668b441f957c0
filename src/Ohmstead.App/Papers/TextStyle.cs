using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>How letters are drawn.</summary>
/// <param name="Points">Their size.</param>
internal readonly record struct TextStyle(double Points, bool IsBold, XColor Ink);
