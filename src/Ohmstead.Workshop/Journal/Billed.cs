using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>What the owner was charged; the last bill counts.</summary>
/// <param name="Sum">In the shop's money.</param>
/// <param name="Words">What to remember of it; may be empty. Of a repair that ended at a stop point it begins with <see cref="Ended"/>.</param>
public sealed record Billed(decimal Sum, string Words) : Fact
{
    /// <summary>Before the words of the stop point at which a repair ended.</summary>
    public const string Ended = "Ended: ";

    /// <summary>True where the repair ended before its end: the unit does not go back as working.</summary>
    [JsonIgnore]
    public bool IsEnded => Words.StartsWith(Ended, StringComparison.Ordinal);

    /// <summary>At which stop point.</summary>
    [JsonIgnore]
    public string EndedWhy => IsEnded ? Words[Ended.Length..] : "";
}
