using System.Text.Json;
using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>Facts as JSON, the same in the store and in what goes out: camel case, words for enumerations.</summary>
public static class FactText
{
    /// <summary>How every JSON of the workshop is written.</summary>
    public static JsonSerializerOptions Options { get; } =
        new(JsonSerializerDefaults.Web)
        {
            Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
            AllowOutOfOrderMetadataProperties = true,
            Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };

    /// <summary>A fact as one line of JSON.</summary>
    public static string Write(Fact fact) => fact is Unread unread ? unread.Text : JsonSerializer.Serialize(fact, Options);

    /// <summary>Reads a fact; what this version does not know is kept as <see cref="Unread"/>.</summary>
    public static Fact Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<Fact>(text, Options) ?? new Unread(text);
        }
        catch (JsonException)
        {
            return new Unread(text);
        }
        catch (NotSupportedException)
        {
            return new Unread(text);
        }
    }
}
