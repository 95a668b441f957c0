namespace Ohmstead.Storage;

/// <summary>The data folder cannot be used as it is; the message says why, and what to do, in words for the person at the bench.</summary>
public sealed class StoreUnusable : Exception
{
    /// <inheritdoc/>
    public StoreUnusable(string message, Exception? inner = null)
        : base(message, inner) { }
}
