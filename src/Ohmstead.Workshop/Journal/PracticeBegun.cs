using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>The unit is not on any bench: it was invented to practice on, and the program plays its meter.</summary>
/// <param name="Seed">What it was drawn from: the same seed gives the same unit.</param>
public sealed record PracticeBegun(int Seed) : Fact
{
    /// <summary>The faults that a person chose for it, as "element:mode" with blanks between; null where the program drew them.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Faults { get; init; }
}
