namespace Ohmstead.Workshop.Journal;

/// <summary>The name of a photo: the SHA-256 of its bytes, 64 lower-case hexadecimal digits.</summary>
public static class PhotoHash
{
    /// <summary>True for the name of a photo; whatever else is asked for leads to no file.</summary>
    public static bool IsOne(string text) => text.Length == 64 && text.All(char.IsAsciiHexDigitLower);
}
