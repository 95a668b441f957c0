using System.Text.Json;
using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>From another program nothing is taken for granted: every field there, none null that must not be, no numbers for words.</summary>
internal static class StrictJson
{
    public static JsonSerializerOptions Options { get; } = Make();

    private static JsonSerializerOptions Make()
    {
        var strict = new JsonSerializerOptions(FactText.Options)
        {
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
        };
        strict.Converters.Clear();
        strict.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        return strict;
    }
}
