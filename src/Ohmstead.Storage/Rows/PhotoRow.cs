namespace Ohmstead.Storage.Rows;

/// <summary>A photo whose file is on the disk.</summary>
internal sealed class PhotoRow
{
    public string Hash { get; set; } = "";

    /// <summary>SHA-256 of the file; empty when it is the hash. A photo of before headers were taken out keeps its name without them.</summary>
    public string FileHash { get; set; } = "";
    public long Bytes { get; set; }
    public int WidthPixels { get; set; }
    public int HeightPixels { get; set; }
    public string MediaType { get; set; } = "";
    public DateTimeOffset At { get; set; }
}
