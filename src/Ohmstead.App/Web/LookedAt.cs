namespace Ohmstead.App.Web;

/// <summary>
/// Which units windows of this program show. Of what other programs enter, these alone are worked out here: the others are by whoever
/// entered it. Any thread may ask.
/// </summary>
public sealed class LookedAt
{
    private readonly Dictionary<Guid, int> windows = [];
    private readonly Lock door = new();

    /// <summary>The units.</summary>
    public IReadOnlyList<Guid> Units
    {
        get
        {
            lock (door)
                return [.. windows.Keys];
        }
    }

    /// <summary>True while a window shows the unit.</summary>
    public bool Has(Guid unitId)
    {
        lock (door)
            return windows.ContainsKey(unitId);
    }

    /// <summary>A window shows the unit, until it says that it does no more.</summary>
    public void Begin(Guid unitId)
    {
        lock (door)
            windows[unitId] = windows.GetValueOrDefault(unitId) + 1;
    }

    /// <summary>A window shows the unit no more.</summary>
    public void End(Guid unitId)
    {
        lock (door)
            if (windows.TryGetValue(unitId, out var count) && count > 1)
                windows[unitId] = count - 1;
            else
                windows.Remove(unitId);
    }
}
