namespace Ohmstead.Workshop.Stores;

/// <summary>How a cache stands.</summary>
/// <param name="Name">What is kept in it, for a person.</param>
/// <param name="Limit">The most that is kept at a time.</param>
/// <param name="Count">What is kept now.</param>
/// <param name="Hits">How often it was there when it was asked for.</param>
/// <param name="Misses">How often it was not, and had to be made.</param>
public sealed record CacheCount(string Name, int Limit, int Count, long Hits, long Misses);
