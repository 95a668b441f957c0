using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>A test that this unit does not need, or that could not be taken here.</summary>
/// <param name="Test">Which test.</param>
/// <param name="Title">What it is called, in words.</param>
/// <param name="Why">Why, in words: "no ground wire, by design".</param>
public sealed record TestNotTaken(string Test, string Title, string Why) : Fact
{
    /// <summary>A unit of two wires.</summary>
    public const string NoGroundWire = "no ground wire fitted, by design";

    /// <summary>A secondary that the maker joined to the core.</summary>
    public const string JoinedToCore = "joined to the core on purpose";

    /// <summary>True where the unit is made so: no work is left out, and no change of a part asks for it again.</summary>
    [JsonIgnore]
    public bool IsByDesign => Why is NoGroundWire or JoinedToCore;
}
