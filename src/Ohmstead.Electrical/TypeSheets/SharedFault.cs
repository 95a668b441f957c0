using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>
/// A fault that several parts of one kind have together, with one size: the plates of a stack age together. It is a fault of its own
/// beside those of the single parts, and none of them has another while it is there.
/// </summary>
/// <param name="Elements">The elements or sliders that share it.</param>
/// <param name="Mode">A fault mode of their kind.</param>
/// <param name="Percent">Chance of it in an unserviced unit [%].</param>
public sealed record SharedFault(string Id, ImmutableArray<string> Elements, string Mode, double Percent)
{
    /// <summary>The most that a chance may be [%].</summary>
    private const double MostPercent = 99;

    /// <summary>The fault as read, unknown fields included.</summary>
    internal AsRead AsRead { get; init; } = AsRead.Nothing;

    /// <summary>Reads one, collecting problems.</summary>
    internal static SharedFault? Read(JsonCursor at)
    {
        if (!at.IsObject())
            return null;
        var elements = at.Words("elements");
        if (elements.Distinct(StringComparer.Ordinal).Count() < 2)
            at.Report("elements", "names fewer than two parts", "a fault of one part is in that part's own \"faults\"");
        return new SharedFault(at.Word("id"), elements, at.Word("mode"), at.Number("percent", 0, MostPercent)) { AsRead = new(at.Element) };
    }

    /// <summary>It without a part that is new or gone: the others may have it still, if there are two or more.</summary>
    internal SharedFault Without(string element)
    {
        if (!Elements.Contains(element))
            return this;
        var left = Elements.Remove(element);
        return this with { Elements = left.IsEmpty ? Elements : left, Percent = left.Length > 1 ? Percent : 0 };
    }
}
