namespace Ohmstead.Storage;

/// <summary>The data folder or the database cannot be used as it is; the message says why, and what to do, in words for the person at the bench.</summary>
public sealed class StoreUnusable : Exception
{
    /// <inheritdoc/>
    public StoreUnusable(string message, Exception? inner = null)
        : base(message, inner) { }

    /// <summary>True when what was sent may have been kept all the same: the way was cut at its very end.</summary>
    public bool IsUnsure { get; init; }
}
