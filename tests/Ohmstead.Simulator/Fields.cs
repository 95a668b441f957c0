using System.Globalization;
using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Reads and writes the fields of a JSON object by the names of docs/formats.md.</summary>
internal static class Fields
{
    public static double Number(this JsonObject at, string name) =>
        at[name]?.GetValue<double>() ?? throw new InvalidDataException($"{name} is missing in {at.ToJsonString()}");

    public static double Number(this JsonObject at, string name, double otherwise) => at[name]?.GetValue<double>() ?? otherwise;

    public static string Word(this JsonObject at, string name) =>
        at[name]?.GetValue<string>() ?? throw new InvalidDataException($"{name} is missing in {at.ToJsonString()}");

    public static string Word(this JsonObject at, string name, string otherwise) => at[name]?.GetValue<string>() ?? otherwise;

    public static IEnumerable<JsonObject> Objects(this JsonObject at, string name) =>
        at[name] is JsonArray list ? list.Select(entry => entry!.AsObject()) : [];

    public static IEnumerable<string> Words(this JsonNode? list) =>
        list is JsonArray array ? array.Select(entry => entry!.GetValue<string>()) : [];

    public static JsonObject ById(this JsonObject sheet, string list, string id) =>
        sheet.Objects(list).FirstOrDefault(entry => entry.Word("id") == id)
        ?? throw new InvalidDataException($"there is no {id} in {list}");

    public static JsonObject Copy(this JsonObject at) => at.DeepClone().AsObject();

    /// <summary>A number for a netlist or a command line: shortest form that reads back the same.</summary>
    public static string Text(this double value) => value.ToString("R", CultureInfo.InvariantCulture);

    public static string Text(this int value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Round(this double value, int places) => value.ToString("F" + places.Text(), CultureInfo.InvariantCulture);

    public static double Parse(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
