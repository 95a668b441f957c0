using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>A step of taking apart was done.</summary>
/// <param name="Step">Id of the take-apart step.</param>
/// <param name="Cup">Cup that its pieces lie in; 0 for none.</param>
/// <param name="Pieces">Pieces that came off, springs and nuts too.</param>
/// <param name="Words">What is to be remembered; may be empty.</param>
public sealed record TakenOff(string Step, int Cup, int Pieces, string Words) : Fact
{
    /// <summary>What came off, in words, of a unit whose type was not known; null where a type sheet has them.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Title { get; init; }
}

/// <summary>Something became of pieces of a step that is off.</summary>
/// <param name="Step">Id of the take-apart step.</param>
/// <param name="Pieces">How many [1..].</param>
public sealed record PieceNoted(string Step, PieceFate Fate, int Pieces, string Words) : Fact;

/// <summary>What became of a piece that does not go back as it came off.</summary>
public enum PieceFate
{
    /// <summary>It is to be renewed.</summary>
    Renew,

    /// <summary>It broke.</summary>
    Broke,

    /// <summary>It is lost.</summary>
    Lost,
}
