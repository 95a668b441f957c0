namespace Ohmstead.Workshop.Stores;

/// <summary>What a store that several programs share says of itself.</summary>
/// <param name="UnitId">The unit, where it is of one.</param>
/// <param name="Kind">The kind of document, where it is of one.</param>
/// <param name="Words">Why it is away, and what to do.</param>
public sealed record StoreNews(NewsOf About, Guid UnitId, string Kind, string Words);

/// <summary>What news of a store are of.</summary>
public enum NewsOf
{
    /// <summary>Another program entered something on a unit.</summary>
    Entries,

    /// <summary>Another program kept what a diagnosis of a unit found.</summary>
    Found,

    /// <summary>Another program saved a document.</summary>
    Document,

    /// <summary>The store does not answer.</summary>
    Away,

    /// <summary>It answers again; what others did meanwhile was not told.</summary>
    Back,
}
