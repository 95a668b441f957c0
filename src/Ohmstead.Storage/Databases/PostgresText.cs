using System.Text;

namespace Ohmstead.Storage.Databases;

/// <summary>PostgreSQL keeps any text but a zero character and half a character. A fact has neither: JSON writes them out.</summary>
internal static class PostgresText
{
    /// <summary>The text, with a sign for what cannot be kept in the place of each; the same object where all of it can.</summary>
    public static string Storable(string text)
    {
        if (!text.Any(c => c == '\0' || char.IsSurrogate(c)))
            return text;
        var kept = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            kept.Append(rune.Value == 0 ? Rune.ReplacementChar : rune);
        return kept.ToString() is var storable && storable == text ? text : storable;
    }
}
