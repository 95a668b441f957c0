using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Tests.TypeSheets;

/// <summary>Spoils the text of a JSON file: in its tree, in its characters, or both.</summary>
internal sealed class Mutation(Random random)
{
    private static readonly string[] Numbers =
    [
        "0",
        "-0",
        "1e300",
        "-1e300",
        "1e-300",
        "1e999",
        "-1",
        "0.5",
        "1",
        "2",
        "1e13",
        "5e-324",
        "1e8",
        "1e-9",
        "NaN",
        "Infinity",
        "\"NaN\"",
        "9007199254740993",
        "0.30000000000000004",
    ];

    private static readonly string[] Values =
    [
        "null",
        "true",
        "\"\"",
        "\"x\"",
        "[]",
        "{}",
        "[[]]",
        "[null]",
        "\"OL\"",
        "{\"id\":\"x\"}",
        "\"\\u0000\"",
        "\"\\ud800\"",
    ];

    /// <summary>The text spoilt in one to four places; mostly still JSON.</summary>
    public string Spoil(string text)
    {
        var tree = JsonNode.Parse(text)!;
        var holes = new List<(string Key, string Raw)>();
        for (var n = random.Next(1, 4); n > 0; n--)
            SpoilTree(tree, holes);
        var spoilt = tree.ToJsonString();
        // Numbers and values that a tree cannot hold are put into the text afterwards.
        foreach (var (key, raw) in holes)
            spoilt = spoilt.Replace($"\"{key}\"", raw, StringComparison.Ordinal);
        return random.Next(8) == 0 ? SpoilText(spoilt) : spoilt;
    }

    private void SpoilTree(JsonNode root, List<(string Key, string Raw)> holes)
    {
        var places = Places(root).ToArray();
        if (places.Length == 0)
            return;
        var place = places[random.Next(places.Length)];
        switch (random.Next(8))
        {
            case 0:
                place.Remove();
                break;
            case 1:
                place.Duplicate(random);
                break;
            case 2 or 3:
                place.Set(Hole(holes, Numbers[random.Next(Numbers.Length)]));
                break;
            case 4:
                place.Set(Hole(holes, Values[random.Next(Values.Length)]));
                break;
            case 5:
                place.Set(places[random.Next(places.Length)].Value?.DeepClone());
                break;
            case 6:
                SwapWords(places);
                break;
            default:
                Scale(places);
                break;
        }
    }

    private static JsonNode Hole(List<(string Key, string Raw)> holes, string raw)
    {
        var key = $"hole-{holes.Count.ToString(CultureInfo.InvariantCulture)}-";
        holes.Add((key, raw));
        return key;
    }

    /// <summary>Two ids, terminals or kinds change places.</summary>
    private void SwapWords(Place[] places)
    {
        var words = places.Where(p => p.Value is JsonValue v && v.GetValueKind() == System.Text.Json.JsonValueKind.String).ToArray();
        if (words.Length < 2)
            return;
        var (a, b) = (words[random.Next(words.Length)], words[random.Next(words.Length)]);
        var (one, other) = (a.Value!.DeepClone(), b.Value!.DeepClone());
        a.Set(other);
        b.Set(one);
    }

    /// <summary>A number becomes much larger or smaller, or changes its sign.</summary>
    private void Scale(Place[] places)
    {
        var numbers = places.Where(p => p.Value is JsonValue v && v.GetValueKind() == System.Text.Json.JsonValueKind.Number).ToArray();
        if (numbers.Length == 0)
            return;
        var place = numbers[random.Next(numbers.Length)];
        var value = place.Value!.GetValue<double>() * Math.Pow(10, random.Next(-12, 13)) * (random.Next(10) == 0 ? -1 : 1);
        place.Set(double.IsFinite(value) ? value : 0);
    }

    private string SpoilText(string text)
    {
        var made = new StringBuilder(text);
        for (var n = random.Next(1, 6); n > 0 && made.Length > 1; n--)
        {
            var at = random.Next(made.Length);
            switch (random.Next(4))
            {
                case 0:
                    made.Length = at;
                    break;
                case 1:
                    made.Remove(at, Math.Min(random.Next(1, 20), made.Length - at));
                    break;
                case 2:
                    made.Insert(at, "{}[],:\"\\0-e.\u0000\uFFFDé"[random.Next(15)]);
                    break;
                default:
                    made.Insert(at, made.ToString(at, Math.Min(random.Next(1, 60), made.Length - at)));
                    break;
            }
        }
        return made.ToString();
    }

    private static IEnumerable<Place> Places(JsonNode node)
    {
        var own = node switch
        {
            JsonObject o => o.Select(f => new Place(o, f.Key, -1)),
            JsonArray a => Enumerable.Range(0, a.Count).Select(n => new Place(a, "", n)),
            _ => [],
        };
        foreach (var place in own.ToArray())
        {
            yield return place;
            if (place.Value is { } below)
                foreach (var deeper in Places(below))
                    yield return deeper;
        }
    }

    /// <summary>A field of an object or an item of a list.</summary>
    private sealed record Place(JsonNode Parent, string Key, int Index)
    {
        public JsonNode? Value =>
            Parent is JsonObject o ? o[Key]
            : Index < ((JsonArray)Parent).Count ? ((JsonArray)Parent)[Index]
            : null;

        public void Set(JsonNode? value)
        {
            if (Parent is JsonObject o)
                o[Key] = value;
            else if (Index < ((JsonArray)Parent).Count)
                ((JsonArray)Parent)[Index] = value;
        }

        public void Remove()
        {
            if (Parent is JsonObject o)
                o.Remove(Key);
            else if (Index < ((JsonArray)Parent).Count)
                ((JsonArray)Parent).RemoveAt(Index);
        }

        public void Duplicate(Random random)
        {
            if (Parent is JsonObject o)
                o[Key + "2"] = Value?.DeepClone();
            else
            {
                var list = (JsonArray)Parent;
                for (var n = random.Next(1, 4); n > 0; n--)
                    list.Insert(random.Next(list.Count + 1), Value?.DeepClone());
            }
        }
    }
}
