using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Words;

/// <summary>
/// The one place where ids of a sheet become words: the title that the sheet gives, or else a name made from the kind of part
/// and what it lies between. No id is ever shown to a person.
/// </summary>
public static class PartNames
{
    /// <summary>An element or slider as it is said in a sentence, without an article: "red wire from lug 14 to post C".</summary>
    public static string Of(TypeSheet sheet, string id) => sheet.Titles.TryGetValue(id, out var title) ? title : MadeNames.Part(sheet, id);

    /// <summary>The same with its article: "the red wire of post 1", "post A".</summary>
    public static string The(TypeSheet sheet, string id) => WithArticle(IsTerminal(sheet, id) ? Terminal(sheet, id) : Of(sheet, id));

    /// <summary>A terminal: "the 14 V post", "post A", "lug 14".</summary>
    public static string Terminal(TypeSheet sheet, string id) =>
        id.Length == 0 ? ""
        : sheet.Titles.TryGetValue(id, out var title) ? title
        : MadeNames.Terminal(sheet, id);

    /// <summary>Terminals one after another: "post A, post B and the core".</summary>
    public static string Terminals(TypeSheet sheet, IEnumerable<string> ids) => Sentences.List(ids.Select(t => Terminal(sheet, t)));

    /// <summary>An end, written <c>w-6.to</c> or <c>main.tap-1</c>: "yellow wire of post B, its end at the 6 V lug".</summary>
    public static string End(TypeSheet sheet, string end) => $"{Of(sheet, MadeNames.PartOfEnd(end))}, {EndAlone(sheet, end)}";

    /// <summary>An end where its part was named: "its inner end", "its end at lug 14".</summary>
    public static string EndAlone(TypeSheet sheet, string end) =>
        sheet.Titles.TryGetValue(end, out var title) ? title : MadeNames.End(sheet, end);

    /// <summary>A control: "left throttle".</summary>
    public static string Control(TypeSheet sheet, string id) =>
        sheet.Titles.TryGetValue(id, out var title) ? title : MadeNames.Control(sheet, id);

    /// <summary>A position of a selector: "lever in the middle", "step 2".</summary>
    public static string Position(TypeSheet sheet, string control, string position) =>
        sheet.Titles.TryGetValue($"{control}={position}", out var title) ? title : MadeNames.Position(sheet, control, position);

    /// <summary>A core: "core".</summary>
    public static string Core(TypeSheet sheet, string id) =>
        sheet.Titles.TryGetValue(id, out var title) ? title : MadeNames.Core(sheet, id);

    /// <summary>A reading, by its title; of one that the sheet does not have, its id in words where it is words.</summary>
    public static string Reading(TypeSheet? sheet, string id) =>
        sheet?.FindReading(id) is not { } spec ? MadeNames.Unknown(id, "a reading that this type sheet does not have")
        : spec.Title.Length > 0 ? spec.Title
        : MadeNames.Reading(sheet, spec);

    /// <summary>A take-apart step, as it is said after "take off" and "put back": "steel cover".</summary>
    public static string Step(TypeSheet? sheet, string id) =>
        sheet?.TakeApart.FirstOrDefault(s => s.Id == id) is { Title.Length: > 0 } step
            ? Sentences.Small(step.Title)
            : MadeNames.Step(sheet, id);

    /// <summary>A symptom, by its title.</summary>
    public static string Symptom(TypeSheet? sheet, string id) =>
        sheet?.Observations.FirstOrDefault(o => o.Id == id) is { Title.Length: > 0 } seen
            ? seen.Title
            : MadeNames.Unknown(id, "a symptom without a title");

    /// <summary>A fault within a sentence: "worn roller, track 1", "cold joint at the 14 V post".</summary>
    public static string Fault(TypeSheet sheet, FaultMode mode) => Fault(sheet, mode.Element, mode.Mode);

    /// <summary>A fault within a sentence, by the ids of part and mode.</summary>
    public static string Fault(TypeSheet sheet, string part, string mode) =>
        sheet.FindShared(part) is null ? FaultNames.Of(sheet.KindOf(part), mode, Of(sheet, part)) : Of(sheet, part);

    /// <summary>A fault as a heading: "Worn roller, track 1".</summary>
    public static string Headline(TypeSheet sheet, FaultMode mode) => Sentences.Large(Fault(sheet, mode));

    /// <summary>A part's name as a heading, its first letter large.</summary>
    /// <param name="sheet">The unit's sheet; null while its type is not known.</param>
    public static string Title(TypeSheet? sheet, string id) => Sentences.Large(sheet is null ? Unknown(id, "a part") : Of(sheet, id));

    /// <summary>A fault as a heading, by the ids of part and mode.</summary>
    /// <param name="sheet">The unit's sheet; null while its type is not known.</param>
    public static string Headline(TypeSheet? sheet, string part, string mode) =>
        sheet is null ? $"{Title(null, part)}: a fault" : Sentences.Large(Fault(sheet, part, mode));

    /// <summary>What a mode is called where its part was named: "worn", "poor contact", "cold"; of a fault that parts share, all of it.</summary>
    public static string Mode(TypeSheet sheet, FaultMode mode) =>
        mode.IsShared ? Of(sheet, mode.Element) : FaultNames.Alone(mode.Kind, mode.Mode);

    /// <summary>What sort of part it is: "wire", "breaker", "roller or shoe".</summary>
    public static string Sort(ElementKind kind) => kind == ElementKind.Slider ? "roller or shoe" : kind.Word();

    /// <summary>A name with its article, where a sentence wants one: "the core", but "post A" and "lug 14".</summary>
    public static string WithArticle(string name)
    {
        var words = name.Split(' ');
        var isCalledSo =
            words.Length == 2
            && (words[1].Length == 1 || words[1].All(c => char.IsAsciiDigit(c) || c == '-' || char.IsAsciiLetterUpper(c)));
        return name.Length == 0 || isCalledSo || words[0] is "the" or "a" or "an" or "its" or "both" or "all" ? name : $"the {name}";
    }

    /// <summary>What no sheet at hand knows: its id where that is words already, or else <paramref name="otherwise"/>.</summary>
    public static string Unknown(string id, string otherwise) => MadeNames.Unknown(id, otherwise);

    private static bool IsTerminal(TypeSheet sheet, string id) => sheet.KindOf(id) is null && sheet.FindShared(id) is null;
}
