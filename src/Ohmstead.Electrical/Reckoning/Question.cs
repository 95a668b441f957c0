using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace Ohmstead.Electrical.Reckoning;

/// <summary>Something to reckon, with all it needs: what a person could have typed at the bench, checked.</summary>
public abstract record Question
{
    /// <summary>Reckons it.</summary>
    public abstract Answer Answer();
}

/// <summary>
/// An answer: its properties are the fields of the JSON object, in their order, by their names in camel case. The same record is
/// what a screen shows.
/// </summary>
public abstract record Answer
{
    /// <summary>What it comes to, in a sentence or two for the person at the bench.</summary>
    [JsonPropertyOrder(1)]
    public ImmutableArray<string> Words { get; init; } = [];

    /// <summary>The hazards.</summary>
    [JsonPropertyOrder(2)]
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>The limits of validity that this question leaves.</summary>
    [JsonPropertyOrder(3)]
    public ImmutableArray<string> Outside { get; init; } = [];

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Converters = { new FiniteNumber() },
    };

    /// <summary>One object: the question's word, then the fields. A number beyond all numbers is null.</summary>
    public JsonObject ToJson(string word)
    {
        var all = new JsonObject { ["question"] = word };
        foreach (var (name, value) in JsonSerializer.SerializeToNode(this, GetType(), Options)!.AsObject())
            all[name] = value?.DeepClone();
        return all;
    }

    private sealed class FiniteNumber : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (double.IsFinite(value))
                writer.WriteNumberValue(value);
            else
                writer.WriteNullValue();
        }
    }
}
