using System.Text.Json;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>
/// The JSON that a sheet or a part was read from: what this program does not know is in it, and is written back from it. It is no part of
/// what a part is: two that differ in nothing else are equal.
/// </summary>
internal sealed class AsRead(JsonElement json) : IEquatable<AsRead>
{
    /// <summary>Of what was not read but made.</summary>
    public static AsRead Nothing { get; } = new(JsonElement.Parse("{}"));

    /// <summary>The JSON itself.</summary>
    public JsonElement Json => json;

    /// <summary>A copy to be changed.</summary>
    public JsonObject Copy() => JsonObject.Create(json)!;

    /// <inheritdoc/>
    public bool Equals(AsRead? other) => other is not null;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is AsRead;

    /// <inheritdoc/>
    public override int GetHashCode() => 0;
}
