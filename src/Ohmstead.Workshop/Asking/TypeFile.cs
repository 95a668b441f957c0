using System.Text.Json;
using System.Text.Json.Serialization;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Asking;

/// <summary>
/// A type of a workshop's own as one file: its answers, where its numbers come from, its sheet, and what was read on sound units. No tag
/// and no owner is in it.
/// </summary>
/// <param name="Ohmstead">The mark of the format.</param>
/// <param name="Sheet">The type sheet.</param>
/// <param name="Type">What was answered, and what was made of it.</param>
public sealed record TypeFile(string Ohmstead, JsonElement Sheet, OwnType Type)
{
    /// <summary>The mark of the format, in the field <c>ohmstead</c>.</summary>
    public const string Mark = "own-type/1";

    private static readonly JsonSerializerOptions Indented = new(FactText.Options) { WriteIndented = true };

    /// <summary>What dates its units; null where nothing was entered.</summary>
    public KindDates? Dating { get; init; }

    /// <summary>Why its years and details cannot be used; empty where they can, or there are none.</summary>
    [JsonIgnore]
    public string DatingProblem { get; init; } = "";

    /// <summary>The sheet's text.</summary>
    public string SheetText => JsonSerializer.Serialize(Sheet, Indented);

    /// <summary>The file of a type.</summary>
    /// <param name="sheet">Text of its sheet.</param>
    /// <param name="sound">Sound units of this bench.</param>
    /// <param name="dates">What dates its units; null for nothing.</param>
    public static string Write(string sheet, OwnType type, IEnumerable<SoundUnit> sound, KindDates? dates = null)
    {
        using var document = JsonDocument.Parse(sheet);
        var told = AtHome(type) with { Sound = SoundUnit.Together(type.Sound, sound) };
        return JsonSerializer.Serialize(new TypeFile(Mark, document.RootElement, told) { Dating = dates }, Indented);
    }

    /// <summary>Units and their tags stay at home, those waiting and those before; and what a type stood beside.</summary>
    private static OwnType AtHome(OwnType type) => type with { Unit = null, Before = [], Beside = "" };

    /// <summary>Reads a file; null for a text that is none.</summary>
    public static TypeFile? Read(string text)
    {
        try
        {
            return
                JsonSerializer.Deserialize<TypeFile>(text, FactText.Options)
                    is { Ohmstead: Mark, Sheet.ValueKind: JsonValueKind.Object, Type: { Answers: not null, Made: not null } } file
                ? file with
                {
                    Type = AtHome(file.Type) with { Sound = file.Type.Sound.IsDefault ? [] : file.Type.Sound },
                    Dating = file.Dating is { } dates ? KindDatesRead.Of(dates).Dates : null,
                    DatingProblem = file.Dating is { } came ? KindDatesRead.Of(came).Problem : "",
                }
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
