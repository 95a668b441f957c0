using System.Net;
using System.Net.Sockets;

namespace Ohmstead.Browser.Tests;

/// <summary>A wire to the tool that can go silent, be cut and be mended. The browser at its end goes on believing that it is on a network.</summary>
internal sealed class Wire : IAsyncDisposable
{
    private readonly IPEndPoint far;
    private readonly TcpListener near;
    private readonly Lock gate = new();
    private readonly List<TcpClient> open = [];
    private readonly Task accepting;
    private bool isCut;
    private volatile bool isSilent;

    /// <param name="far">An address of this machine, where the tool listens; the wire begins at the same one, on a port of its own.</param>
    public Wire(Uri far)
    {
        this.far = new(IPAddress.Parse(far.Host), far.Port);
        near = new(this.far.Address, 0);
        near.Start();
        accepting = AcceptAsync();
    }

    /// <summary>The same page, asked for over this wire.</summary>
    public Uri Over(Uri address) => new UriBuilder(address) { Port = ((IPEndPoint)near.LocalEndpoint).Port }.Uri;

    /// <summary>Nothing comes through any more, and neither end is told.</summary>
    public void Silence() => isSilent = true;

    /// <summary>All that is open ends, and nothing new comes through.</summary>
    public void Cut()
    {
        lock (gate)
        {
            isCut = true;
            foreach (var end in open)
                end.Dispose();
            open.Clear();
        }
    }

    public void Mend()
    {
        lock (gate)
            (isCut, isSilent) = (false, false);
    }

    public async ValueTask DisposeAsync()
    {
        near.Dispose();
        Cut();
        await accepting;
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
                _ = JoinAsync(await near.AcceptTcpClientAsync());
        }
        catch (Exception over) when (over is SocketException or ObjectDisposedException)
        {
            return;
        }
    }

    private async Task JoinAsync(TcpClient here)
    {
        using var there = new TcpClient();
        using (here)
            try
            {
                lock (gate)
                {
                    if (isCut)
                        return;
                    open.AddRange([here, there]);
                }
                await there.ConnectAsync(far);
                await Task.WhenAny(PumpAsync(here, there), PumpAsync(there, here));
            }
            catch (Exception cut) when (cut is SocketException or IOException or ObjectDisposedException or InvalidOperationException)
            {
                return;
            }
    }

    private async Task PumpAsync(TcpClient from, TcpClient to)
    {
        var (source, target, bytes) = (from.GetStream(), to.GetStream(), new byte[16384]);
        while (await source.ReadAsync(bytes) is > 0 and var count)
            if (!isSilent)
                await target.WriteAsync(bytes.AsMemory(0, count));
    }
}
