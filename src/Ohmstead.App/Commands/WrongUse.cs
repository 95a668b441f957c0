using System.CommandLine;
using System.CommandLine.Invocation;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Ohmstead.App.Commands;

/// <summary>What is wrong with a command line, in words, and which help shows what is right.</summary>
internal static partial class WrongUse
{
    [GeneratedRegex("Cannot parse argument '(.*)' for option '(.*)' as expected type 'System.(Int32|Double)'.")]
    private static partial Regex NoNumber();

    [GeneratedRegex("Required argument '(.*)' missing for command: '.*'.|Option '(.*)' is required.")]
    private static partial Regex Missing();

    [GeneratedRegex("Unrecognized command or argument '(.*)'.")]
    private static partial Regex Unknown();

    /// <summary>Says it on standard error: only what is wrong, not the whole help; it is no result.</summary>
    public static void Say(ParseResult parsed, ParseErrorAction mistake)
    {
        mistake.ShowHelp = false;
        using var said = new StringWriter(CultureInfo.InvariantCulture);
        parsed.Invoke(
            new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false,
                Output = said,
                Error = said,
            }
        );
        var words = NoNumber()
            .Replace(
                said.ToString(),
                m => $"{m.Groups[2].Value}: “{m.Groups[1].Value}” is not a {(m.Groups[3].Value == "Int32" ? "whole number" : "number")}."
            );
        words = Missing().Replace(words, m => $"{m.Groups[1].Value}{m.Groups[2].Value} is missing.");
        words = Unknown().Replace(words, m => $"“{m.Groups[1].Value}” is not known here.");
        Console.Error.WriteLine(words.Trim());
        Console.Error.WriteLine(
            parsed.CommandResult.Command is Verb verb
                ? $"ohmstead {verb.Name} --help shows what it takes."
                : "ohmstead --help lists the commands."
        );
    }
}
