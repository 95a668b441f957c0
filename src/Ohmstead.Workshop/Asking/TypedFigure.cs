using System.Collections.Immutable;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Asking;

/// <summary>A number as it was typed for an outline: "18", "18,5", "17-19" for anything between; empty is unknown.</summary>
internal static class TypedFigure
{
    private static readonly string[] Dashes = ["-", "–", "−", " to "];

    /// <summary>The number in the words of an outline; null with what is wrong when it is none.</summary>
    public static (object? Figure, string Problem) Read(string typed)
    {
        var text = typed.Trim();
        if (text.Length == 0)
            return (KindAnswers.Unknown, "");
        foreach (var dash in Dashes)
            if (text.IndexOf(dash, 1, StringComparison.Ordinal) is > 0 and var at)
                return (Number(text[..at]), Number(text[(at + dash.Length)..])) is ({ } low, { } high)
                    ? (new OutlineFields { ["between"] = new[] { low, high } }, "")
                    : (null, Wrong(text));
        return Number(text) is { } number ? (number, "") : (null, Wrong(text));
    }

    /// <summary>Numbers with spaces, commas and the like between; null when one of them is none.</summary>
    public static ImmutableArray<double>? List(string typed)
    {
        var all = typed
            .Split([' ', ';', '/', '\t'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(t => Number(t.TrimEnd(',')))
            .ToList();
        return all.All(n => n is not null) ? [.. all.Select(n => n!.Value)] : null;
    }

    /// <summary>What is said of a text that is no number.</summary>
    public static string Wrong(string typed) =>
        $"“{NumberText.Short(typed)}” is not a number. Try 18, or 17-19. Leave it empty if you don’t know.";

    private static double? Number(string text) => NumberText.Plain(text) is { Problem: "", Value: >= 0 and var value } ? value : null;
}
