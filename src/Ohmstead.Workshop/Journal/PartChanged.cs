using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>A part of the circuit was changed: every expected value after it is another.</summary>
/// <param name="Element">Element or slider.</param>
/// <param name="Change">How.</param>
/// <param name="Part">The new element as in a type sheet, for <see cref="PartChange.Replaced"/> and <see cref="PartChange.Added"/>;
/// for <see cref="PartChange.Moved"/> the ends that moved ("from", "to", "tap-1") with their terminals.</param>
public sealed record PartChanged(string Element, PartChange Change, JsonElement? Part, string Words) : Fact
{
    /// <summary>Readings taken before that it cannot have moved: they still count. Journals of older versions name none.</summary>
    public ImmutableArray<string> Keeps { get; init; } = [];

    /// <summary>The part that went in, where it came out of the shop's drawer; null where it did not, and in journals of older versions.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public FromDrawer? From { get; init; }

    /// <summary>What else of the drawer went in with it, such as the pin of a roller; none in journals of older versions.</summary>
    public ImmutableArray<FromDrawer> Also { get; init; } = [];

    /// <summary>All of it that came out of the shop's drawer.</summary>
    [JsonIgnore]
    public IEnumerable<FromDrawer> FromTheDrawer => From is { } from ? Also.Prepend(from) : Also;

    /// <inheritdoc/>
    public bool Equals(PartChanged? other) =>
        other is not null
        && (Element, Change, Words, Part.HasValue, From) == (other.Element, other.Change, other.Words, other.Part.HasValue, other.From)
        && (Part is not { } part || JsonElement.DeepEquals(part, other.Part!.Value))
        && Keeps.SequenceEqual(other.Keeps)
        && Also.SequenceEqual(other.Also);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Element, Change, Words);
}

/// <summary>How a part was changed.</summary>
public enum PartChange
{
    /// <summary>A new part of the same kind.</summary>
    Renewed,

    /// <summary>Another part in its place.</summary>
    Replaced,

    /// <summary>Taken out for good.</summary>
    Removed,

    /// <summary>Put in where nothing was.</summary>
    Added,

    /// <summary>Unsoldered and soldered again.</summary>
    Rewired,

    /// <summary>Cleaned, tightened or set, the same part.</summary>
    Serviced,

    /// <summary>Some ends of it are on other terminals than the sheet has them, and stay there.</summary>
    Moved,
}
