using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Puts a mistake of a rewire into a sheet, from its id alone (docs/formats.md, section 10).</summary>
internal static class MistakeEdits
{
    /// <param name="id"><c>swap:A.to~B.to</c>, <c>moved:A.to&gt;T</c>, <c>bridge:X~Y</c>, <c>off:A</c>, <c>reversed:W</c>, <c>bypassed:B</c>, <c>cold:J</c>.</param>
    /// <param name="ohms">Resistance of a bridge, a bypass, a cold joint or a wire that is off.</param>
    public static JsonObject Apply(JsonObject sheet, string id, double ohms)
    {
        JsonObject unit = sheet.DeepClone().AsObject();
        int colon = id.IndexOf(':');
        (string kind, string what) = (id[..colon], id[(colon + 1)..]);
        switch (kind)
        {
            case "swap":
                string[] ends = what.Split('~');
                (string one, string other) = (Home(unit, ends[0]), Home(unit, ends[1]));
                Put(unit, ends[0], other);
                Put(unit, ends[1], one);
                break;
            case "moved":
                string[] parts = what.Split('>');
                Put(unit, parts[0], parts[1]);
                break;
            case "bridge":
                string[] joined = what.Split('~');
                unit["elements"]!
                    .AsArray()
                    .Add(
                        new JsonObject
                        {
                            ["id"] = "_bridge",
                            ["kind"] = "joint",
                            ["from"] = joined[0],
                            ["to"] = joined[1],
                            ["ohms"] = ohms,
                        }
                    );
                break;
            case "reversed":
                JsonObject turned = unit.ById("elements", what);
                (turned["from"], turned["to"]) = (turned.Word("to"), turned.Word("from"));
                break;
            case "off" or "bypassed" or "cold":
                unit.ById("elements", what)["ohms"] = ohms;
                break;
            default:
                throw new InvalidDataException($"there is no mistake {id}");
        }
        return unit;
    }

    private static string Home(JsonObject unit, string end) => unit.ById("elements", Element(end)).Word(Side(end));

    private static void Put(JsonObject unit, string end, string terminal) => unit.ById("elements", Element(end))[Side(end)] = terminal;

    private static string Element(string end) => end[..end.LastIndexOf('.')];

    private static string Side(string end) => end[(end.LastIndexOf('.') + 1)..];
}
