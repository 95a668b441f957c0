using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Proving;

/// <summary>A wiring mistake in words: what is wrong, where, and what to do.</summary>
public static class MistakeWords
{
    /// <summary>Several mistakes at once; "wired as planned" for none.</summary>
    public static string Of(IEnumerable<Mistake> mistakes, TypeSheet sheet) =>
        string.Join("; and ", mistakes.Select(m => Of(m, sheet))) is { Length: > 0 } words ? words : "wired as planned";

    /// <summary>One mistake and what to do: "the boost winding is wired backward: swap its two ends".</summary>
    public static string Of(Mistake mistake, TypeSheet sheet)
    {
        var (kind, what) = Split(mistake);
        return $"{Name(mistake, sheet)}: {kind switch
        {
            "swap" => "unsolder both, cross them, solder, tug",
            "moved" => $"move it to {Home(what, sheet)}",
            "bridge" => "look from two sides and wick it off",
            "off" => $"solder it between {Ends(what, sheet)}",
            "reversed" => "swap its two ends",
            "bypassed" => $"put it back in line, between {Ends(what, sheet)}",
            _ => "resolder it",
        }}";
    }

    /// <summary>What is wrong, without what to do: "solder bridge between cord lug 1 and cord lug 2".</summary>
    public static string Name(Mistake mistake, TypeSheet sheet)
    {
        var (kind, what) = Split(mistake);
        var parts = what.Split('~', '>');
        return kind switch
        {
            "swap" => Swapped(parts[0], parts[1], sheet),
            "moved" => $"{PartNames.The(sheet, Part(parts[0]))} is on {PartNames.Terminal(sheet, parts[1])}",
            "bridge" => $"solder bridge between {PartNames.Terminal(sheet, parts[0])} and {PartNames.Terminal(sheet, parts[1])}",
            "off" => $"{PartNames.The(sheet, what)} is not connected",
            "reversed" => $"{PartNames.The(sheet, what)} is wired backward",
            "bypassed" => $"{PartNames.The(sheet, what)} is left out",
            _ when sheet.Elements.Any(e => e.Id == what && e.Kind == ElementKind.Joint) => PartNames.Fault(sheet, what, "resistive"),
            _ => $"cold joint on {PartNames.The(sheet, what)}",
        };
    }

    /// <summary>The first ones by their names, and how many more there are.</summary>
    public static IReadOnlyList<string> Lines(IReadOnlyCollection<Mistake> mistakes, int most, TypeSheet sheet)
    {
        List<string> names = [.. mistakes.Select(m => Name(m, sheet)).Distinct(StringComparer.Ordinal)];
        return names.Count > most ? [.. names.Take(most), $"and {ValueText.Plain(names.Count - most)} more"] : names;
    }

    /// <summary>Two wires that have the same ends to choose from: which end it was, no reading shows.</summary>
    private static string Swapped(string one, string other, TypeSheet sheet)
    {
        var (a, b) = (Part(one), Part(other));
        var isSameSide = one[(a.Length + 1)..] == other[(b.Length + 1)..];
        return isSameSide && IsWire(a, sheet) && IsWire(b, sheet)
            ? $"{PartNames.The(sheet, a)} and {PartNames.The(sheet, b)} are swapped, at one end or the other"
            : $"{PartNames.The(sheet, a)} and {PartNames.The(sheet, b)} are swapped, at {Home(one, sheet)} and {Home(other, sheet)}";
    }

    private static bool IsWire(string id, TypeSheet sheet) => sheet.Elements.Any(e => e.Id == id && e.Kind == ElementKind.Wire);

    private static (string Kind, string What) Split(Mistake mistake)
    {
        var at = mistake.Id.IndexOf(':', StringComparison.Ordinal);
        return (mistake.Id[..at], mistake.Id[(at + 1)..]);
    }

    private static string Part(string end) => end[..end.LastIndexOf('.')];

    private static string Ends(string id, TypeSheet sheet)
    {
        var element = sheet.Elements.First(e => e.Id == id);
        return $"{PartNames.Terminal(sheet, element.From)} and {PartNames.Terminal(sheet, element.To)}";
    }

    /// <summary>The terminal that an end belongs on.</summary>
    private static string Home(string end, TypeSheet sheet)
    {
        var own = end.Split('>')[0];
        var element = sheet.Elements.First(e => e.Id == Part(own));
        return PartNames.Terminal(sheet, own.EndsWith(".to", StringComparison.Ordinal) ? element.To : element.From);
    }
}
