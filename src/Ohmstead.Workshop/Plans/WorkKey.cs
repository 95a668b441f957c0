using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>
/// Which work of one unit counts as the same work on another: steps of the same type, parts of the same sort treated the same way.
/// </summary>
public static class WorkKey
{
    /// <summary>Wiring check and first power, all of it.</summary>
    public const string Check = "check";

    /// <summary>A step of taking apart.</summary>
    public static string Off(string sheetId, string step) => $"off {sheetId} {step}";

    /// <summary>A step of putting together.</summary>
    public static string Back(string sheetId, string step) => $"back {sheetId} {step}";

    /// <summary>Work on a part of the circuit or of the look-over.</summary>
    public static string Of(TypeSheet? sheet, string about, WorkSort sort) => $"work {SortOf(sheet, about)} {sort}";

    /// <summary>What was done, as a sort of work.</summary>
    public static WorkSort SortOf(PartChange change) =>
        change switch
        {
            PartChange.Serviced => WorkSort.Service,
            PartChange.Rewired or PartChange.Moved => WorkSort.Resolder,
            _ => WorkSort.Replace,
        };

    /// <summary>What was decided, as a sort of work; a joint that is tightened is resoldered.</summary>
    public static WorkSort SortOf(DecidedAct act, TypeSheet? sheet, string about) =>
        act == DecidedAct.Replace ? WorkSort.Replace
        : act == DecidedAct.Tighten && KindOf(sheet, about) is ElementKind.Joint or ElementKind.Wire ? WorkSort.Resolder
        : WorkSort.Service;

    /// <summary>What a remedy asks for, by its words: "Clean, then replace" may come to replacing.</summary>
    public static WorkSort SortOf(string act) =>
        act.Contains("replace", StringComparison.OrdinalIgnoreCase) ? WorkSort.Replace
        : act.Contains("resolder", StringComparison.OrdinalIgnoreCase) ? WorkSort.Resolder
        : WorkSort.Service;

    private static string SortOf(TypeSheet? sheet, string about) =>
        KindOf(sheet, about) switch
        {
            null => about,
            ElementKind.Wire when LiveSide.Plug(sheet!).Any(t => Ends(sheet!, about).Contains(t)) => "cord",
            { } kind => PartNames.Sort(kind),
        };

    private static ElementKind? KindOf(TypeSheet? sheet, string about) => sheet?.KindOf(sheet.PartsOf(about)[0]);

    private static IEnumerable<string> Ends(TypeSheet sheet, string about) =>
        sheet.Elements.Where(e => e.Id == about).SelectMany(e => new[] { e.From, e.To });
}

/// <summary>What is done with a part.</summary>
public enum WorkSort
{
    /// <summary>Cleaned, set.</summary>
    Service,

    /// <summary>Unsoldered and soldered again.</summary>
    Resolder,

    /// <summary>Another one put in.</summary>
    Replace,
}
