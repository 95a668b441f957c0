using System.Collections.Concurrent;

namespace Ohmstead.App.Phones;

/// <summary>The live connections of devices: each ends at once when its device is shut out, or its time is over.</summary>
internal sealed class LiveConnections(TimeProvider time)
{
    private readonly ConcurrentDictionary<object, (Guid DeviceId, Action End)> open = new();

    /// <summary>A connection came or went. Called from any thread.</summary>
    public event Action? Changed;

    /// <summary>True while a device has one.</summary>
    public bool Has(Guid deviceId) => open.Values.Any(o => o.DeviceId == deviceId);

    /// <summary>Runs one until it ends.</summary>
    /// <param name="end">Ends it, whatever it does.</param>
    public async Task RunAsync(Device device, Action end, Func<Task> run)
    {
        var place = new object();
        open[place] = (device.Id, end);
        Changed?.Invoke();
        var left = device.Until - time.GetUtcNow();
        // A timer takes no more than that; what is open for so long is asked again when it connects anew.
        using var timer = time.CreateTimer(_ => end(), null, left < MostTimer ? left : MostTimer, Timeout.InfiniteTimeSpan);
        try
        {
            await run();
        }
        finally
        {
            open.TryRemove(place, out _);
            Changed?.Invoke();
        }
    }

    /// <summary>Ends all of a device.</summary>
    public void End(Guid deviceId)
    {
        foreach (var (_, connection) in open)
            if (connection.DeviceId == deviceId)
                connection.End();
    }

    private static readonly TimeSpan MostTimer = TimeSpan.FromDays(40);
}
