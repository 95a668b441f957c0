using System.Globalization;
using System.Text;
using QRCoder;

namespace Ohmstead.App.Phones;

/// <summary>A QR code as a drawing, black on white in either light, with the quiet border that a camera needs.</summary>
internal static class QrSvg
{
    public static string Of(string text)
    {
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var rows = code.ModuleMatrix;
        var path = new StringBuilder();
        for (var y = 0; y < rows.Count; y++)
        for (var x = 0; x < rows[y].Length; x++)
            if (rows[y][x])
                path.Append(CultureInfo.InvariantCulture, $"M{x},{y}h1v1h-1z");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"""<svg viewBox="0 0 {rows.Count} {rows.Count}" shape-rendering="crispEdges"><rect width="100%" height="100%" fill="#fff"/><path d="{path}" fill="#000"/></svg>"""
        );
    }
}
