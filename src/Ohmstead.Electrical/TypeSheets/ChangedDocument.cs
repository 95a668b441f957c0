using System.Text.Json;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>
/// The text of a sheet while its circuit is changed. What is written back and what a next change starts from is then what the
/// circuit is now, not what it was on the day the sheet was read.
/// </summary>
internal sealed class ChangedDocument(JsonObject document)
{
    /// <summary>The whole text as it is now.</summary>
    public JsonObject Root { get; } = (JsonObject)document.DeepClone();

    private JsonArray Elements
    {
        get
        {
            if (Root["elements"] is JsonArray there)
                return there;
            JsonArray made = [];
            Root["elements"] = made;
            return made;
        }
    }

    /// <summary>Puts another part in the place of one.</summary>
    public void Replace(string id, JsonElement part)
    {
        if (IndexOf(id) is >= 0 and var at)
            Elements[at] = JsonNode.Parse(part.GetRawText());
    }

    /// <summary>Puts a part in where there was none.</summary>
    public void Add(JsonElement part) => Elements.Add(JsonNode.Parse(part.GetRawText()));

    /// <summary>Takes a part out.</summary>
    public void Remove(string id)
    {
        if (IndexOf(id) is >= 0 and var at)
            Elements.RemoveAt(at);
    }

    /// <summary>Puts an end ("from", "to", "tap-1") on another terminal.</summary>
    public void Move(string id, string side, string terminal)
    {
        if (IndexOf(id) is not (>= 0 and var at) || Elements[at] is not JsonObject part)
            return;
        if (UnitFile.TapOf(side) is not { } tap)
            part[side] = terminal;
        else if (part["taps"] is JsonArray taps && tap < taps.Count)
            taps[tap]!["to"] = terminal;
    }

    private int IndexOf(string id)
    {
        for (var n = 0; n < Elements.Count; n++)
            if (Elements[n] is JsonObject element && (string?)element["id"] == id)
                return n;
        return -1;
    }
}
