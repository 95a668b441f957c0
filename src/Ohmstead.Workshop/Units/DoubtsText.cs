using System.Text.Json;
using System.Text.Json.Serialization;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Units;

/// <summary>
/// What is doubted of a unit as the store keeps it, so that a doubted check opens nothing after a new start either. It is no part of
/// the journal: the next diagnosis finds it again.
/// </summary>
public static class DoubtsText
{
    private static readonly JsonSerializerOptions Options = new(FactText.Options)
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    /// <summary>As text; empty where nothing is doubted.</summary>
    public static string Write(UnitDoubts doubts) => doubts.IsEmpty ? "" : JsonSerializer.Serialize(doubts with { Trouble = "" }, Options);

    /// <summary>Back from it.</summary>
    public static UnitDoubts Read(string text) =>
        text.Length == 0 ? UnitDoubts.None : JsonSerializer.Deserialize<UnitDoubts>(text, Options)!;
}
