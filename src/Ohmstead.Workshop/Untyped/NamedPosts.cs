using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Untyped;

/// <summary>Terminals named on the way, from what was typed.</summary>
public static class NamedPosts
{
    private const int MostLetters = 30;

    private const int Most = 40;

    private static readonly char[] Between = [' ', ',', ';', '\t', '\n', '\r'];

    /// <summary>Posts of a unit that comes in: "A B U" is three.</summary>
    public static ImmutableArray<TerminalNamed> Read(string text) =>
        [
            .. text.Split(Between, StringSplitOptions.RemoveEmptyEntries)
                .Select(n => n.Length <= MostLetters ? n : n[..MostLetters])
                .Distinct(StringComparer.Ordinal)
                .Take(Most)
                .Select((name, n) => new TerminalNamed(IdOf(n + 1, isPost: true), name, IsPost: true)),
        ];

    /// <summary>One more terminal; null with what is wrong when it cannot be named so.</summary>
    public static (TerminalNamed? Named, string Problem) Add(BenchUnit unit, string name, bool isPost)
    {
        var (written, all) = (name.Trim(), UntypedSheet.Terminals(unit));
        if (written.Length is 0 or > MostLetters)
            return (null, $"Write its mark or a short name, up to {MostLetters.ToString(CultureInfo.InvariantCulture)} letters.");
        if (all.Any(t => t.Name == written && t.IsPost == isPost))
            return (null, $"“{written}” is named already.");
        if (all.Length >= Most)
            return (null, $"At most {Most.ToString(CultureInfo.InvariantCulture)} terminals.");
        var taken = unit.All<TerminalNamed>().Select(t => t.Fact.Id).ToHashSet(StringComparer.Ordinal);
        var n = 1;
        while (taken.Contains(IdOf(n, isPost)))
            n++;
        return (new TerminalNamed(IdOf(n, isPost), written, isPost), "");
    }

    private static string IdOf(int n, bool isPost) =>
        string.Create(CultureInfo.InvariantCulture, $"{UntypedIds.Prefix}{(isPost ? "post" : "lug")}-{n}");
}
