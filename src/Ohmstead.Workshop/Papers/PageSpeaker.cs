using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>Says the phrases of the owner's page in its language, and notes which of them that language does not have: English stands there.</summary>
/// <param name="language">Null for English.</param>
internal sealed partial class PageSpeaker(PageLanguage? language)
{
    /// <summary>Between a caution and its English.</summary>
    public const string Beside = " / ";

    /// <summary>What names are put together with, the loosest first.</summary>
    private static readonly string[] Joints = [". ", "; ", ": ", " – ", ", "];

    /// <summary>Words between two names that make one: the file says how, "{0} of {1} = {0} von {1}".</summary>
    private static readonly string[] Links = [" of ", " to "];

    private readonly List<string> missing = [];

    /// <summary>A page in English.</summary>
    public static PageSpeaker English => new(null);

    /// <summary>True where nothing is to stand beside the English.</summary>
    public bool IsEnglish => language is null;

    /// <summary>English phrases and names that were asked for and are not there, in the order of the page.</summary>
    public ImmutableArray<string> Missing => [.. missing];

    /// <summary>A phrase with words put in: the file has it as it is written here, with {0} for the first.</summary>
    public string Say(FormattableString phrase)
    {
        var english = phrase.ToString(CultureInfo.InvariantCulture);
        if (language is null)
            return english;
        if (language.Words.TryGetValue(phrase.Format, out var own))
            return string.Format(CultureInfo.InvariantCulture, own, phrase.GetArguments());
        Miss(phrase.Format);
        return english;
    }

    /// <summary>A fixed phrase or a name: whole, or put together from what the file has.</summary>
    public string Name(string english)
    {
        if (language is null || english.Length == 0)
            return english;
        if (Find(english) is { } own)
            return char.IsUpper(english[0]) ? Sentences.Large(own) : own;
        foreach (var joint in Joints)
            if (english.Split(joint) is { Length: > 1 } parts)
                return string.Join(joint, parts.Select(Name));
        if (KeyOf(english).Key is var key && key is not (PageLanguageFile.AnyValue or "OL"))
            Miss(key);
        return english;
    }

    /// <summary>Words that a person wrote: said in the page's language where the file has them, and left as they are where not.</summary>
    public string Known(string words) => language is null ? words : Find(words) ?? words;

    /// <summary>A date that nobody reads the wrong way round.</summary>
    public string Day(DateTimeOffset at) =>
        language is null
            ? PaperParts.Day(at)
            : Say(
                $"{at.Day.ToString(CultureInfo.InvariantCulture)} {Name(at.ToString("MMM", CultureInfo.InvariantCulture))} {at.Year.ToString(CultureInfo.InvariantCulture)}"
            );

    /// <summary>A caution on one line, its English beside it.</summary>
    public string Caution(Func<PageSpeaker, string> line) => string.Join(Beside, Cautions(s => [line(s)]));

    /// <summary>Cautions, each with its English on the line after it.</summary>
    public ImmutableArray<string> Cautions(Func<PageSpeaker, ImmutableArray<string>> lines) =>
        language is null
            ? lines(this)
            : [.. lines(this).Zip(lines(English)).SelectMany(l => l.First == l.Second ? [l.First] : new[] { l.First, l.Second })];

    private string? Find(string english)
    {
        var (key, values) = KeyOf(english);
        if (language!.Words.TryGetValue(Plain(english), out var whole))
            return whole;
        if (language.Words.TryGetValue(key, out var text))
        {
            var n = 0;
            return AnyValue().Replace(text, _ => values[n++]);
        }
        foreach (var (before, after, own) in language.Patterns)
            if (
                english.Length > before.Length + after.Length
                && english.StartsWith(before, StringComparison.OrdinalIgnoreCase)
                && english.EndsWith(after, StringComparison.OrdinalIgnoreCase)
                && Find(english[before.Length..^after.Length]) is { } inner
            )
                return own.Replace(PageLanguageFile.AnyName, inner, StringComparison.Ordinal);
        foreach (var link in Links)
            if (
                english.Split(link) is [var one, var other]
                && language.Words.TryGetValue("{0}" + link + "{1}", out var linked)
                && Find(one) is { } first
                && Find(other) is { } second
            )
                return string.Format(CultureInfo.InvariantCulture, linked, first, second);
        return null;
    }

    /// <summary>A name as a file has it: each number with its unit, and each mark of a post, as one sign.</summary>
    private static (string Key, List<string> Values) KeyOf(string english)
    {
        var values = new List<string>();
        var key = Value()
            .Replace(
                english,
                m =>
                {
                    values.Add(m.Value);
                    return PageLanguageFile.AnyValue;
                }
            );
        return (Plain(key), values);
    }

    /// <summary>A file has plain blanks only.</summary>
    private static string Plain(string words) => words.Replace('\u00a0', ' ');

    private void Miss(string key)
    {
        if (!missing.Contains(key, StringComparer.OrdinalIgnoreCase))
            missing.Add(key);
    }

    [GeneratedRegex(
        @"(?<![\p{L}\d])(?:\d+(?:[.,/]\d+)*(?:–\d+(?:\.\d+)?)?(?:[ \u00a0](?:[kMGmµ]?Ω|[mkµ]?[VAW]|%|°C|min|s)(?![\p{L}]))?|[A-Z](?:-?\d+)?)(?![\p{L}\d])"
    )]
    private static partial Regex Value();

    [GeneratedRegex("#")]
    private static partial Regex AnyValue();
}
