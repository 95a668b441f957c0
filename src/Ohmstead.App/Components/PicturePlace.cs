using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace Ohmstead.App.Components;

/// <summary>Places on a picture, from 0 to 1 across and down, as sliders and styles have them.</summary>
internal static class PicturePlace
{
    /// <summary>What a slider from 0 to 100 says; the middle when it says nothing.</summary>
    public static double Share(ChangeEventArgs e) =>
        double.TryParse((string?)e.Value, CultureInfo.InvariantCulture, out var percent) ? Math.Clamp(percent / 100, 0, 1) : 0.5;

    /// <summary>A place for a slider from 0 to 100.</summary>
    public static string Percent(double share) => Math.Round(share * 100).ToString(CultureInfo.InvariantCulture);

    /// <summary>The style that puts a mark there.</summary>
    public static string Place(double across, double down) =>
        string.Create(CultureInfo.InvariantCulture, $"left:{across * 100:0.##}%;top:{down * 100:0.##}%");
}
