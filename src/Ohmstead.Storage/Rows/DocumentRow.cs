using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Rows;

/// <summary>One version of a document; versions are added, never changed.</summary>
internal sealed class DocumentRow
{
    public string Kind { get; set; } = "";
    public string Id { get; set; } = "";
    public int Version { get; set; }
    public DateTimeOffset At { get; set; }
    public string Text { get; set; } = "";

    public Document Document => new(Kind, Id, Version, At, Text);
}
