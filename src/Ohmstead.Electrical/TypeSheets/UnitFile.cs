using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Unit files: how one unit differs from its sheet.</summary>
public static class UnitFile
{
    /// <summary>The mark of the format.</summary>
    public const string Mark = "unit/1";

    /// <summary>A new part fails this much less often than an old one.</summary>
    private const double RenewedShare = 0.1;

    /// <summary>Chance that a joint or wire soldered anew is cold [%] (common practice, no source).</summary>
    private const double ColdPercent = 3;

    /// <summary>Chance that a winding or rectifier went back by the wrong ends [%] (common practice, no source).</summary>
    private const double ReversedPercent = 8;

    /// <summary>Chance that a wire was left off [%] (common practice, no source).</summary>
    private const double OffPercent = 2;

    /// <summary>Reads a unit file and gives the sheet of this very unit: circuit changed, chances of new parts lowered.</summary>
    public static Parsed<TypeSheet> Read(string text, TypeSheet sheet)
    {
        var problems = new List<Problem>();
        if (!JsonCursor.TryOpen(text, problems, out var root))
            return new(null, problems);
        TypeSheetFile.CheckMark(root, Mark);
        if (root.Word("sheet") is var id && id.Length > 0 && id != sheet.Id)
            root.Report("sheet", $"is \"{id}\"", $"this unit is of another sheet than \"{sheet.Id}\"");
        var elements = sheet.Elements.ToList();
        var titles = sheet.Titles;
        var document = new ChangedDocument(TypeSheetFile.JsonOf(sheet));
        foreach (var change in root.List("changes"))
        {
            if (!change.IsObject())
                continue;
            Apply(change, elements, sheet, document);
            foreach (var part in new[] { "replace", "add" })
                if (change.Has(part))
                    titles = TitleReader.With(titles, change.At(part));
        }
        foreach (var r in root.List("renewed"))
            Rechance(r, elements, Renewed);
        foreach (var r in root.List("rewired"))
            Rechance(r, elements, Rewired);
        var changed = sheet with { Elements = [.. elements], Titles = titles, AsRead = new(document.Root.Deserialize<JsonElement>()) };
        if (problems.Count == 0)
            SheetChecks.Run(
                root,
                changed,
                sheet.Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To)).ToHashSet(StringComparer.Ordinal)
            );
        return new(problems.Count == 0 ? changed : null, problems);
    }

    private static void Apply(JsonCursor change, List<Element> elements, TypeSheet sheet, ChangedDocument document)
    {
        if (change.Has("replace"))
        {
            var part = ElementReader.Read(change.At("replace"), sheet.SupplyVolts);
            if (part is null)
                return;
            var at = elements.FindIndex(e => e.Id == part.Id);
            if (at < 0)
                change.Report("replace.id", $"\"{part.Id}\" is no element", "a part replaces one of the same id");
            else
            {
                elements[at] = Renewed(part);
                document.Replace(part.Id, change.At("replace").Element);
            }
        }
        else if (change.Has("remove"))
        {
            var id = change.Word("remove");
            if (elements.RemoveAll(e => e.Id == id) == 0)
                change.Report("remove", $"\"{id}\" is no element", "name an element of the sheet");
            document.Remove(id);
        }
        else if (change.Has("add"))
        {
            if (ElementReader.Read(change.At("add"), sheet.SupplyVolts) is not { } part)
                return;
            elements.Add(part);
            document.Add(change.At("add").Element);
        }
        else if (change.Has("move"))
            Move(change, elements, document);
        else
            change.Report("is no change", "replace, remove, add or move is expected");
    }

    private static void Move(JsonCursor change, List<Element> elements, ChangedDocument document)
    {
        var (end, to) = (change.Word("move"), change.Word("to"));
        var cut = end.LastIndexOf('.');
        var at = cut < 0 ? -1 : elements.FindIndex(e => e.Id == end[..cut]);
        var side = cut < 0 ? "" : end[(cut + 1)..];
        if (at < 0 || Moved(elements[at], side, to) is not { } moved)
        {
            change.Report(
                "move",
                $"\"{end}\" is no end of an element",
                "element.from, element.to or, of a winding, element.tap-1 is expected"
            );
            return;
        }
        elements[at] = moved;
        document.Move(end[..cut], side, to);
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
    internal static int? TapOf(string side) =>
        side.StartsWith("tap-", StringComparison.Ordinal)
        && int.TryParse(side.AsSpan(4), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
        && n > 0
            ? n - 1
            : null;

    private static void Rechance(JsonCursor at, List<Element> elements, Func<Element, Element> change)
    {
        var id = at.AsWord();
        var n = elements.FindIndex(e => e.Id == id);
        if (n >= 0)
        {
            elements[n] = change(elements[n]);
            return;
        }
        for (n = 0; n < elements.Count; n++)
        {
            if (elements[n] is not Winding w || w.Sliders.FirstOrDefault(s => s.Id == id) is not { } slider)
                continue;
            elements[n] = w with
            {
                Sliders = w.Sliders.Replace(slider, slider with { Percents = Lower(ElementKind.Slider, slider.Percents) }),
            };
            return;
        }
        at.Report($"\"{id}\" is no element", "name elements or sliders of the unit");
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
                            (ElementKind.Breaker, "bypassed") => 1,
                            _ => e.Percents.GetValueOrDefault(m.Mode, m.Percent),
                        }
                ),
        };
}
