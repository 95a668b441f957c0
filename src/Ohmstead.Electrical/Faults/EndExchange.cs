using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Faults;

/// <summary>An exchange of two ends, written <c>A.to~B.to:swap</c>: a mistake of rewiring that changes the wiring itself.</summary>
public static class EndExchange
{
    /// <summary>True when the text is written as an exchange.</summary>
    public static bool IsOne(string text) =>
        text.EndsWith(":swap", StringComparison.Ordinal) && text.Contains('~', StringComparison.Ordinal);

    /// <summary>The sheet with the two ends exchanged; null and a reason when the text names no two ends.</summary>
    public static TypeSheet? Apply(TypeSheet sheet, string text, out string reason)
    {
        var ends = text[..^":swap".Length].Split('~');
        reason = $"\"{text}\" names no two ends; ELEMENT.to~ELEMENT.from:swap is expected";
        if (ends.Length != 2 || !TryFind(sheet, ends[0], out var a, out var aIsTo) || !TryFind(sheet, ends[1], out var b, out var bIsTo))
            return null;
        reason = "";
        var (ta, tb) = (TerminalOf(sheet.Elements[a], aIsTo), TerminalOf(sheet.Elements[b], bIsTo));
        var elements = sheet.Elements.SetItem(a, With(sheet.Elements[a], aIsTo, tb));
        elements = elements.SetItem(b, With(elements[b], bIsTo, ta));
        return sheet with { Elements = elements };
    }

    private static bool TryFind(TypeSheet sheet, string end, out int element, out bool isTo)
    {
        var cut = end.LastIndexOf('.');
        (element, isTo) = (-1, end.EndsWith(".to", StringComparison.Ordinal));
        if (cut < 0 || !(isTo || end.EndsWith(".from", StringComparison.Ordinal)))
            return false;
        for (var n = 0; n < sheet.Elements.Length; n++)
            if (sheet.Elements[n].Id == end[..cut])
                element = n;
        return element >= 0;
    }

    private static string TerminalOf(Element e, bool isTo) => isTo ? e.To : e.From;

    private static Element With(Element e, bool isTo, string terminal) => isTo ? e with { To = terminal } : e with { From = terminal };
}
