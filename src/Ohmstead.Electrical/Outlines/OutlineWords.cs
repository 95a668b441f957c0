using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Reads the words of an outline: ids, names of posts, one of several.</summary>
internal static class OutlineWords
{
    public static T OneOf<T>(JsonCursor at, string word, string field, params ReadOnlySpan<(string Word, T Value)> known)
    {
        var right = new List<string>();
        foreach (var k in known)
        {
            if (k.Word == word)
                return k.Value;
            right.Add(k.Word);
        }
        if (word.Length > 0)
            at.Report(field, $"\"{word}\" is not known here", "one of " + string.Join(", ", right));
        return known[0].Value;
    }

    public static string Name(JsonCursor at, string field, string? usual = null)
    {
        var name = usual is null ? at.Word(field) : at.Word(field, usual);
        if (name != OpenWords.Unknown)
            return name;
        at.Report(field, "is unknown, and there is nothing to choose from", "say it, or give what it may be: { \"oneOf\": [ … ] }");
        return "";
    }

    public static string Id(JsonCursor at, string field)
    {
        var id = Name(at, field);
        if (
            id.Length > 0
            && (id.Length > 60 || id.Split('-').Any(w => w.Length == 0 || !w.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c))))
        )
            at.Report(field, $"\"{id}\" is no id", "lower-case words with hyphens between, 60 letters at most");
        return id;
    }

    public static string PostName(JsonCursor at, string field) => at.Has(field) ? Checked(at.At(field), Name(at, field)) : Name(at, field);

    public static string Checked(JsonCursor at, string post)
    {
        if (post.Length > 60 || post.Any(c => !char.IsLetterOrDigit(c) && c is not ('-' or '+' or '/')))
            at.Report($"\"{post}\" is no name of a post", "what is printed beside it, without spaces, 60 letters at most");
        return post;
    }
}
