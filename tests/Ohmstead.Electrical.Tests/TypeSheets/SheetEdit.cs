using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.TypeSheets;

/// <summary>The sample sheet as JSON, to be spoilt in one place, and the paths of its parts.</summary>
internal sealed class SheetEdit
{
    public JsonObject Json { get; } = Reference.Json("tests/Reference/sample/twin-160.sheet.json");

    public JsonObject Element(string id) => Item("elements", id);

    public JsonObject Reading(string id) => Item("readings", id);

    public JsonObject Step(string id) => Item("takeApart", id);

    public JsonObject Item(string list, string id) => Json[list]!.AsArray()[IndexOf(list, id)]!.AsObject();

    /// <summary>The JSON path of an item.</summary>
    public string PathOf(string list, string id) => FormattableString.Invariant($"$.{list}[{IndexOf(list, id)}]");

    public IReadOnlyList<Problem> Problems() => TypeSheetFile.Read(Json.ToJsonString()).Problems;

    private int IndexOf(string list, string id)
    {
        var items = Json[list]!.AsArray();
        for (var n = 0; n < items.Count; n++)
            if (items[n]!["id"]!.GetValue<string>() == id)
                return n;
        throw new ArgumentException($"no {id} in {list}", nameof(id));
    }
}
