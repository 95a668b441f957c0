namespace Ohmstead.Storage.Rows;

/// <summary>A photo's bytes, where the database keeps them: every bench of a club sees them, and its own backup holds them.</summary>
internal sealed class PhotoContentRow
{
    public string Hash { get; set; } = "";
    public byte[] Content { get; set; } = [];
}
