using System.Text.RegularExpressions;

namespace Ohmstead.App.Tests;

/// <summary>Counts that nobody would say: "0 symptoms", "1 readings", "0 min".</summary>
internal static partial class SillyCounts
{
    private const string Nouns =
        "(reading|observation|symptom|sign|piece|step|check|mistake|finding|fault|photo|unit|part|pair|thing|terminal|joint|minute|waiver|caution|repair|group|position|turn|place|wire end|sound unit|remark)";

    [GeneratedRegex(
        $@"(?<![\d.,/–-]|post |lug )(0 (more |new |possible |other )?{Nouns}s?|1 (more |new |possible |other )?{Nouns}s|[01] entries|0 (min|entry))\b(?! of)"
    )]
    private static partial Regex Said();

    /// <summary>The first of them in a text; empty for none.</summary>
    public static string In(string text) => Said().Match(text).Value;
}
