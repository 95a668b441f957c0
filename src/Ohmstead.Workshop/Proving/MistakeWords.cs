using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Proving;

/// <summary>A mistake of a rewire in words: what is wrong, where, and what to do.</summary>
public static class MistakeWords
{
    /// <summary>Several mistakes at once; "wired as planned" for none.</summary>
    public static string Of(IEnumerable<Mistake> mistakes, TypeSheet sheet) =>
        string.Join("; and ", mistakes.Select(m => Of(m, sheet))) is { Length: > 0 } words ? words : "wired as planned";

    /// <summary>One mistake, with the parts and terminals by the names that stand in the sheet.</summary>
    public static string Of(Mistake mistake, TypeSheet sheet)
    {
        var at = mistake.Id.IndexOf(':', StringComparison.Ordinal);
        var (kind, what) = (mistake.Id[..at], mistake.Id[(at + 1)..]);
        string Ends(string element) =>
            sheet.Elements.First(e => e.Id == element) is var e ? $"{e.From} and {e.To}" : "";
        return kind switch
        {
            "swap" => $"the ends {what.Replace("~", " and ", StringComparison.Ordinal)} are exchanged: put each in the other's place",
            "moved" => $"the end {what.Replace(">", " sits on ", StringComparison.Ordinal)}: put it back on {Home(what, sheet)}",
            "bridge" => $"{what.Replace("~", " and ", StringComparison.Ordinal)} are bridged: look for solder or a whisker",
            "off" => $"the wire {what} is off, between {Ends(what)}",
            "reversed" => $"{what} is reversed: exchange its ends at {Ends(what)}",
            "bypassed" => $"{what} is bypassed, between {Ends(what)}",
            _ => $"{what} is cold: solder it anew, between {Ends(what)}",
        };
    }

    private static string Home(string moved, TypeSheet sheet)
    {
        var end = moved[..moved.IndexOf('>', StringComparison.Ordinal)];
        var element = sheet.Elements.First(e => e.Id == end[..end.LastIndexOf('.')]);
        return end.EndsWith(".to", StringComparison.Ordinal) ? element.To : element.From;
    }
}
