using System.Collections.Concurrent;
using System.Net;
using Microsoft.AspNetCore.Connections;

namespace Ohmstead.App.Phones;

/// <summary>
/// Counts the connections of the encrypted door before anything is read of them: a stranger who opens more and says nothing takes neither
/// this machine's memory nor the places of the devices.
/// </summary>
internal sealed class DoorKeeper
{
    /// <summary>A browser opens six, and one for each live page.</summary>
    public const int MostOfAddress = 48;

    /// <summary>Of all addresses together.</summary>
    public const int Most = 512;

    private readonly ConcurrentDictionary<IPAddress, int> open = new();
    private int all;

    /// <summary>Lets one in, or ends it at once.</summary>
    /// <param name="next">What becomes of one that is let in, until it ends.</param>
    public async Task AdmitAsync(ConnectionContext connection, ConnectionDelegate next)
    {
        var from = (connection.RemoteEndPoint as IPEndPoint)?.Address.MapToIPv6() ?? IPAddress.IPv6None;
        var (ofAddress, together) = (open.AddOrUpdate(from, 1, (_, n) => n + 1), Interlocked.Increment(ref all));
        try
        {
            if (ofAddress <= MostOfAddress && together <= Most)
                await next(connection);
            else
                connection.Abort(new ConnectionAbortedException("Too many connections are open."));
        }
        finally
        {
            Interlocked.Decrement(ref all);
            // An address that has none is forgotten: there may be many.
            if (open.AddOrUpdate(from, 0, (_, n) => n - 1) == 0)
                open.TryRemove(KeyValuePair.Create(from, 0));
        }
    }
}
