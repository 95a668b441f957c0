using System.Text.RegularExpressions;

namespace Ohmstead.Workshop.Words;

/// <summary>What no line ends within: a number and its unit, a post and its number. Screens and papers go by the one rule.</summary>
public static partial class Unbroken
{
    /// <summary>The space that is no place to end a line.</summary>
    public const char Space = '\u00a0';

    /// <summary>
    /// The spaces that hold, with what stands before each as a group. A regular expression that .NET and browsers read alike: the
    /// page's script takes it from here.
    /// </summary>
    public const string Pattern =
        @"(\d) (?=[VAWΩ%sghN](?![A-Za-z0-9])|[mkMGµ][VAWΩJs](?![A-Za-z0-9])|(?:Hz|°C|°F|min|mm|cm|AWG|USD|EUR|GBP)(?![A-Za-z]))"
        + @"|\b([Pp]ost|[Tt]rack|[Ss]tep|[Ss]peed|[Bb]lade|[Pp]in|[Ll]ug|[Cc]up|[Pp]late|[Rr]oller|[Bb]reaker|[Rr]eading|[Cc]heck) (?=\d|[A-Z](?![A-Za-z0-9]))"
        + @"|\b([VA]) (?=(?:AC|DC)\b)";

    /// <summary>What stands in place of a match.</summary>
    public const string Held = "$1$2$3\u00a0";

    /// <summary>The words with every such space made one that holds.</summary>
    public static string Of(string words) => Rule().Replace(words, Held);

    [GeneratedRegex(Pattern, RegexOptions.CultureInvariant)]
    private static partial Regex Rule();
}
