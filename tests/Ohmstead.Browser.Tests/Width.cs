namespace Ohmstead.Browser.Tests;

/// <summary>The two screens that everything has to fit.</summary>
public enum Width
{
    /// <summary>A phone upright, 390 × 844.</summary>
    Phone,

    /// <summary>A laptop, 1440 × 900.</summary>
    Desk,
}
