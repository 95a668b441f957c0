namespace Ohmstead.App.Papers;

/// <summary>Something a label is drawn on; lengths in points, from the upper left corner.</summary>
internal interface ILabelSurface
{
    /// <summary>A filled box.</summary>
    void Box(double x, double y, double width, double height);

    /// <summary>Clean words on a base line, black or white.</summary>
    void Text(string words, double x, double y, TextStyle style);
}
