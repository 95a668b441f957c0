using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>What lies between two terminals, part by part: the path of least ohms through the unit as its controls stand.</summary>
/// <param name="Parts">In order from the first terminal to the second.</param>
/// <param name="Also">Parts through which some current goes too: they lie beside the path, on a way from one end to the other.</param>
public sealed record MeasuredPath(string First, string Second, ImmutableArray<PathPart> Parts, ImmutableArray<string> Also)
{
    /// <summary>All terminals of the path, in order.</summary>
    public ImmutableArray<string> Terminals { get; } =
    [.. Parts.SelectMany(p => new[] { p.From, p.To }).Prepend(First).Append(Second).Where(t => t.Length > 0).Distinct()];

    /// <summary>The path that a reading goes through; null where nothing joins its two ends.</summary>
    /// <param name="reading">With the state as it really is.</param>
    public static MeasuredPath? Of(TypeSheet sheet, ReadingSpec reading)
    {
        var (first, second) =
            reading.From.Length > 0 ? (reading.From, reading.To) : (reading.State.Source?.From ?? "", reading.State.Source?.To ?? "");
        return Between(sheet, reading.State, first, second);
    }

    /// <summary>The path between two terminals in a state of the unit; null where nothing joins them.</summary>
    public static MeasuredPath? Between(TypeSheet sheet, ReadingState state, string first, string second) =>
        first.Length == 0 || second.Length == 0 || first == second ? null : PathSearch.Run(sheet, state, first, second);

    /// <summary>True unless the element is a contact that stands open.</summary>
    public static bool IsClosed(TypeSheet sheet, Element element, ImmutableDictionary<string, ControlPosition> controls)
    {
        if (element is not Switch s)
            return true;
        var rest = sheet.Controls.FirstOrDefault(c => c.Id == s.Control)?.Rest ?? "";
        return s.ClosedIn.Contains(controls.TryGetValue(s.Control, out var p) ? p.Selector : rest);
    }
}

/// <summary>A part on a path.</summary>
/// <param name="Id">Element or slider; empty for a clip that joins two terminals.</param>
/// <param name="Kind">Null for a clip.</param>
/// <param name="From">Terminal at which the path comes in; empty in the midst of a winding.</param>
/// <param name="To">Terminal at which it goes on.</param>
/// <param name="IsOpen">A contact that stands open, or a path through insulation: nothing should come through.</param>
public sealed record PathPart(string Id, ElementKind? Kind, string From, string To, bool IsOpen);
