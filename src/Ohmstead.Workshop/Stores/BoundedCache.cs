namespace Ohmstead.Workshop.Stores;

/// <summary>
/// What was made once and may be wanted again, at most so many at a time: what nobody asked for longest goes first. Any thread may ask.
/// </summary>
/// <param name="name">What is kept, for a person.</param>
/// <param name="limit">The most that is kept at a time, unless what is over may not go yet.</param>
/// <param name="same">When two keys are the same; their own equality where it is left out.</param>
/// <param name="mayGo">False for a key whose value is still being worked on; all may go where it is left out.</param>
public sealed class BoundedCache<TKey, TValue>(string name, int limit, IEqualityComparer<TKey>? same = null, Func<TKey, bool>? mayGo = null)
    where TKey : notnull
{
    private readonly Dictionary<TKey, LinkedListNode<(TKey Key, TValue Value)>> kept = new(same);
    private readonly LinkedList<(TKey Key, TValue Value)> lastAskedLast = new();
    private readonly Lock door = new();
    private long hits;
    private long misses;

    /// <summary>How it stands.</summary>
    public CacheCount Counted
    {
        get
        {
            lock (door)
                return new(name, limit, kept.Count, hits, misses);
        }
    }

    /// <summary>The keys of all that is kept.</summary>
    public IReadOnlyList<TKey> Keys
    {
        get
        {
            lock (door)
                return [.. kept.Keys];
        }
    }

    /// <summary>What is kept under a key; nothing that is counted.</summary>
    public TValue? Peek(TKey key)
    {
        lock (door)
            return kept.TryGetValue(key, out var found) ? found.Value.Value : default;
    }

    /// <summary>What is kept under a key, if it holds; else nothing.</summary>
    /// <param name="holds">False for what was kept and is out of date.</param>
    public TValue? Find(TKey key, Func<TValue, bool> holds)
    {
        lock (door)
            return Asked(key, holds) is { } found ? found.Value.Value : default;
    }

    /// <summary>Keeps a value, in the place of what was kept under its key.</summary>
    public void Keep(TKey key, TValue value)
    {
        lock (door)
            Add(key, value);
    }

    /// <summary>What is kept under a key, made where it is not there.</summary>
    /// <param name="make">Quick: others wait for it. What takes time is a task that it begins.</param>
    public TValue GetOrAdd(TKey key, Func<TKey, TValue> make)
    {
        lock (door)
            return (Asked(key, _ => true) ?? Add(key, make(key))).Value.Value;
    }

    private LinkedListNode<(TKey Key, TValue Value)>? Asked(TKey key, Func<TValue, bool> holds)
    {
        if (!kept.TryGetValue(key, out var found) || !holds(found.Value.Value))
        {
            misses++;
            return null;
        }
        hits++;
        lastAskedLast.Remove(found);
        lastAskedLast.AddLast(found);
        return found;
    }

    private LinkedListNode<(TKey Key, TValue Value)> Add(TKey key, TValue value)
    {
        if (kept.Remove(key, out var old))
            lastAskedLast.Remove(old);
        var added = kept[key] = lastAskedLast.AddLast((key, value));
        for (var (at, over) = (lastAskedLast.First, kept.Count - limit); at != added && over > 0; )
        {
            var later = at!.Next;
            if (mayGo?.Invoke(at.Value.Key) != false)
            {
                kept.Remove(at.Value.Key);
                lastAskedLast.Remove(at);
                over--;
            }
            at = later;
        }
        return added;
    }
}
