using System.Collections.Concurrent;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawing;

/// <summary>What stands beside the parts of a drawing: their names in plain words, broken to the room they have.</summary>
/// <remarks>
/// Wires, joints and terminals inside the unit carry no name there: their place says which they are, a finger on them names
/// them. That leaves the others letters that are read at arm's length.
/// </remarks>
/// <param name="named">Ids of the parts that carry their name; null for all.</param>
internal sealed class DrawnNames(TypeSheet sheet, IReadOnlySet<string>? named)
{
    private const double Room = 88;
    private const double PostRoom = 120;

    // One layout is drawn for several windows at once.
    private readonly ConcurrentDictionary<string, string> _kept = new(StringComparer.Ordinal);

    /// <summary>The lines above an element on a line; none for a wire or a joint.</summary>
    public string[] Of(Element e) =>
        e.Kind switch
        {
            ElementKind.Wire or ElementKind.Joint => [],
            _ when !IsNamed(e.Id) => [],
            // Its two ends show between what it lies.
            ElementKind.Insulation => ["insulation"],
            _ => Lines(e.Id),
        };

    /// <summary>The lines of the name of a winding or slider.</summary>
    public string[] Lines(string id) => IsNamed(id) ? TextWidth.Wrap(Part(id), ItemSize.NameSize, Room) : [];

    /// <summary>Whether a part carries its name.</summary>
    public bool IsNamed(string id) => named is null || named.Contains(id);

    /// <summary>The lines beside a post or blade.</summary>
    public string[] Post(string terminal) => TextWidth.Wrap(Terminal(terminal), ItemSize.PostSize, PostRoom);

    /// <summary>A part as it is called, without its article.</summary>
    public string Part(string id) => Kept(id, () => PartNames.Of(sheet, id));

    /// <summary>A terminal as it is called, without its article.</summary>
    public string Terminal(string id) =>
        Kept("terminal " + id, () => sheet.Cores.Any(c => c.Id == id) ? PartNames.Core(sheet, id) : PartNames.Terminal(sheet, id));

    private string Kept(string key, Func<string> name) => _kept.GetOrAdd(key, _ => Sentences.Bare(name()));
}
