using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>The sheet of one unit: that of its kind with everything in which the unit differs.</summary>
public static class UnitSheet
{
    /// <summary>A new part fails this much less often than an old one.</summary>
    private const double RenewedShare = 0.1;

    /// <summary>Chance that a joint or wire soldered anew is cold [%] (common practice, no source).</summary>
    private const double ColdPercent = 3;

    /// <summary>Chance that a winding or rectifier went back by the wrong ends [%] (common practice, no source).</summary>
    private const double ReversedPercent = 8;

    /// <summary>Chance that a wire was left off [%] (common practice, no source).</summary>
    private const double OffPercent = 2;

    /// <summary>Puts changes into a sheet, one after the other.</summary>
    /// <param name="problems">What was found wrong while the changes were read; what is wrong with them is added.</param>
    /// <returns>The sheet of the unit; every problem when that makes no circuit any more.</returns>
    public static Parsed<TypeSheet> Of(TypeSheet sheet, IEnumerable<UnitChange> changes, List<Problem> problems)
    {
        var changed = sheet;
        foreach (var change in changes)
            changed = With(changed, change, problems);
        if (problems.Count == 0)
            SheetChecks.Run(
                new JsonCursor(default, "$", problems),
                changed,
                sheet.Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To)).ToHashSet(StringComparer.Ordinal)
            );
        return new(problems.Count == 0 ? changed : null, problems);
    }

    private static TypeSheet With(TypeSheet sheet, UnitChange change, List<Problem> problems) =>
        change switch
        {
            PartReplaced c => Replaced(sheet, c, problems),
            PartAdded c => sheet with { Elements = sheet.Elements.Add(c.Part.Element), Titles = sheet.Titles.SetItems(c.Part.Titles) },
            PartRemoved c => Removed(sheet, c, problems),
            EndMoved c => Moved(sheet, c, problems),
            PartRenewed c when sheet.FindShared(c.Element) is { } shared => shared.Elements.Aggregate(
                sheet with
                {
                    SharedFaults = sheet.SharedFaults.Replace(shared, shared with { Percent = shared.Percent * RenewedShare }),
                },
                (s, id) => Rechanced(s, c, id, Renewed, problems)
            ),
            PartRewired c when sheet.FindShared(c.Element) is { } shared => shared.Elements.Aggregate(
                sheet,
                (s, id) => Rechanced(s, c, id, Rewired, problems)
            ),
            PartRenewed c => Rechanced(Apart(sheet, c.Element), c, c.Element, Renewed, problems),
            PartRewired c => Rechanced(sheet, c, c.Element, Rewired, problems),
            _ => throw new System.Diagnostics.UnreachableException(change.GetType().Name),
        };

    private static TypeSheet Replaced(TypeSheet sheet, PartReplaced change, List<Problem> problems)
    {
        var part = change.Part.Element;
        if (IndexOf(sheet, part.Id) is >= 0 and var at)
        {
            // A part of another kind has no such fault, not even as the last of those that shared it.
            var apart = sheet.Elements[at].Kind == part.Kind ? Apart(sheet, part.Id) : Gone(sheet, part.Id);
            return apart with { Elements = sheet.Elements.SetItem(at, Renewed(part)), Titles = sheet.Titles.SetItems(change.Part.Titles) };
        }
        problems.Add(new($"{change.Path}.replace.id", $"\"{part.Id}\" is no element", "a part replaces one of the same id"));
        return sheet;
    }

    private static TypeSheet Removed(TypeSheet sheet, PartRemoved change, List<Problem> problems)
    {
        if (IndexOf(sheet, change.Element) < 0)
            problems.Add(new($"{change.Path}.remove", $"\"{change.Element}\" is no element", "name an element of the sheet"));
        return Gone(sheet, change.Element) with { Elements = sheet.Elements.RemoveAll(e => e.Id == change.Element) };
    }

    /// <summary>The sheet with a part out of what it shares with others, and without what it alone is left of.</summary>
    private static TypeSheet Gone(TypeSheet sheet, string id) =>
        Apart(sheet, id) is var apart && apart.SharedFaults.IsEmpty
            ? apart
            : apart with
            {
                SharedFaults = apart.SharedFaults.RemoveAll(f => f.Elements.Contains(id)),
            };

    /// <summary>The sheet with a part that is new or gone taken out of what it shares with others.</summary>
    private static TypeSheet Apart(TypeSheet sheet, string id) =>
        sheet.SharedFaults.IsEmpty ? sheet : sheet with { SharedFaults = [.. sheet.SharedFaults.Select(f => f.Without(id))] };

    private static TypeSheet Moved(TypeSheet sheet, EndMoved change, List<Problem> problems)
    {
        var cut = change.End.LastIndexOf('.');
        var at = cut < 0 ? -1 : IndexOf(sheet, change.End[..cut]);
        if (at >= 0 && Moved(sheet.Elements[at], change.End[(cut + 1)..], change.Terminal) is { } moved)
            return sheet with { Elements = sheet.Elements.SetItem(at, moved) };
        problems.Add(
            new(
                $"{change.Path}.move",
                $"\"{change.End}\" is no end of an element",
                "element.from, element.to or, of a winding, element.tap-1 is expected"
            )
        );
        return sheet;
    }

    private static Element? Moved(Element element, string side, string to) =>
        side switch
        {
            "from" => element with { From = to },
            "to" => element with { To = to },
            _ => element is Winding w && TapOf(side) is { } tap && tap < w.Taps.Length
                ? w with
                {
                    Taps = w.Taps.SetItem(tap, w.Taps[tap] with { To = to }),
                }
                : null,
        };

    /// <summary>The place among the taps that "tap-1", "tap-2" … name; null for anything else.</summary>
    private static int? TapOf(string side) =>
        side.StartsWith("tap-", StringComparison.Ordinal)
        && int.TryParse(side.AsSpan(4), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
        && n > 0
            ? n - 1
            : null;

    private static TypeSheet Rechanced(
        TypeSheet sheet,
        UnitChange change,
        string id,
        Func<Element, Element> rechance,
        List<Problem> problems
    )
    {
        if (IndexOf(sheet, id) is >= 0 and var at)
            return sheet with { Elements = sheet.Elements.SetItem(at, rechance(sheet.Elements[at])) };
        foreach (var winding in sheet.Elements.OfType<Winding>())
            if (winding.Sliders.FirstOrDefault(s => s.Id == id) is { } slider)
            {
                var renewed = slider with { Percents = Lower(ElementKind.Slider, slider.Percents) };
                return sheet with
                {
                    Elements = sheet.Elements.Replace(winding, winding with { Sliders = winding.Sliders.Replace(slider, renewed) }),
                };
            }
        problems.Add(new(change.Path, $"\"{id}\" is no element", "name elements or sliders of the unit"));
        return sheet;
    }

    private static int IndexOf(TypeSheet sheet, string id)
    {
        for (var n = 0; n < sheet.Elements.Length; n++)
            if (sheet.Elements[n].Id == id)
                return n;
        return -1;
    }

    /// <summary>A renewed or replaced part: a tenth of its kind's chances, except that of being the wrong way round.</summary>
    private static Element Renewed(Element e) => e with { Percents = Lower(e.Kind, e.Percents) };

    private static ImmutableDictionary<string, double> Lower(ElementKind kind, ImmutableDictionary<string, double> own) =>
        kind.Faults()
            .ToImmutableDictionary(m => m.Mode, m => own.GetValueOrDefault(m.Mode, m.Percent) * (m.Mode == "reversed" ? 1 : RenewedShare));

    /// <summary>A part that was wired anew: the chances of a rewire for the modes that a rewire can cause.</summary>
    private static Element Rewired(Element e) =>
        e with
        {
            Percents = e
                .Kind.Faults()
                .ToImmutableDictionary(
                    m => m.Mode,
                    m =>
                        (e.Kind, m.Mode) switch
                        {
                            (ElementKind.Wire, "open") => OffPercent,
                            (ElementKind.Wire or ElementKind.Joint, "resistive") => ColdPercent,
                            (ElementKind.Winding or ElementKind.Rectifier, "reversed") => ReversedPercent,
                            _ when m.Does == FaultChange.Bypasses => 1,
                            _ => e.Percents.GetValueOrDefault(m.Mode, m.Percent),
                        }
                ),
        };
}
