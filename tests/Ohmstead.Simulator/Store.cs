using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Reads and writes JSON files.</summary>
internal static class Store
{
    private static readonly JsonSerializerOptions Compact = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static JsonObject Read(string path)
    {
        JsonObject file = JsonNode.Parse(File.ReadAllText(path))!.AsObject();
        foreach (JsonObject reading in file.Objects("readings"))
            if (
                reading["state"]?["source"] is JsonObject source
                && source["volts"] is JsonValue word
                && word.TryGetValue(out string? text)
                && text == "mains"
            )
                source["volts"] = file["supply"]!["volts"]!.DeepClone();
        return file;
    }

    public static void Write(string path, JsonNode node)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, node.ToJsonString(Compact) + "\n");
    }

    /// <summary>Puts every entry of the named lists on its own line, so that the file can be read and compared.</summary>
    public static void WriteLines(string path, JsonObject node, params string[] lists)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        IEnumerable<string> fields = node.Select(field =>
        {
            string name = JsonSerializer.Serialize(field.Key, Compact);
            if (!lists.Contains(field.Key) || field.Value is not JsonArray list)
                return $"{name}: {field.Value?.ToJsonString(Compact) ?? "null"}";
            return $"{name}: [\n{string.Join(",\n", list.Select(entry => "  " + entry!.ToJsonString(Compact)))}\n]";
        });
        File.WriteAllText(path, "{\n" + string.Join(",\n", fields) + "\n}\n");
    }
}
