using System.Net;
using System.Net.Sockets;

namespace Ohmstead.Storage.Tests.Databases;

/// <summary>The way from a bench to the database, over the loopback: it can be cut, mended, and made slow.</summary>
internal sealed class CutLine : IAsyncDisposable
{
    private readonly int to;
    private readonly CancellationTokenSource end = new();
    private readonly TcpListener door = new(IPAddress.Loopback, 0);
    private readonly Lock turn = new();
    private readonly HashSet<TcpClient> open = [];
    private readonly Task taking;
    private volatile bool isCut;

    public CutLine(int to)
    {
        this.to = to;
        door.Start();
        taking = Task.Run(TakeAsync);
    }

    /// <summary>Where a bench connects to.</summary>
    public int Port => ((IPEndPoint)door.LocalEndpoint).Port;

    /// <summary>True until it is mended.</summary>
    public bool IsCut => isCut;

    /// <summary>Every answer takes so much longer.</summary>
    public TimeSpan Delay { get; set; }

    /// <summary>Cuts every connection, and each that is begun until it is mended.</summary>
    public void Cut()
    {
        isCut = true;
        lock (turn)
            foreach (var client in open)
                client.Dispose();
    }

    /// <summary>The way is there again.</summary>
    public void Mend() => isCut = false;

    /// <summary>Lets the next COMMIT through and cuts the way before its answer comes back.</summary>
    public void CutAtNextEnd() => Volatile.Write(ref endings, 1);

    private int endings;

    public async ValueTask DisposeAsync()
    {
        await end.CancelAsync();
        Cut();
        door.Stop();
        await taking;
        end.Dispose();
    }

    private async Task TakeAsync()
    {
        while (!end.IsCancellationRequested)
        {
            try
            {
                var bench = await door.AcceptTcpClientAsync(end.Token);
                if (isCut)
                    bench.Dispose();
                else
                    _ = Task.Run(() => CarryAsync(bench));
            }
            catch (Exception stopped) when (stopped is OperationCanceledException or SocketException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    private async Task CarryAsync(TcpClient bench)
    {
        using var server = new TcpClient();
        try
        {
            await server.ConnectAsync(IPAddress.Loopback, to);
            lock (turn)
            {
                open.Add(bench);
                open.Add(server);
            }
            await Task.WhenAny(PipeAsync(bench, server, isAsking: true), PipeAsync(server, bench, isAsking: false));
        }
        catch (Exception broken) when (broken is IOException or SocketException or ObjectDisposedException)
        {
            // The server is away, or the way was cut: the bench sees the same.
        }
        finally
        {
            lock (turn)
            {
                open.Remove(bench);
                open.Remove(server);
            }
            bench.Dispose();
        }
    }

    private async Task PipeAsync(TcpClient from, TcpClient into, bool isAsking)
    {
        var bytes = new byte[1 << 16];
        try
        {
            while (await from.GetStream().ReadAsync(bytes) is var count and > 0)
            {
                var isEnd = isAsking && bytes.AsSpan(0, count).IndexOf("COMMIT\0"u8) >= 0 && Interlocked.Exchange(ref endings, 0) == 1;
                // From before it is let through: the server may answer sooner than the way is cut.
                if (isEnd)
                    isCut = true;
                if (!isAsking && Delay > TimeSpan.Zero)
                    await Task.Delay(Delay);
                if (!isAsking && isCut)
                    return;
                await into.GetStream().WriteAsync(bytes.AsMemory(0, count));
                if (isEnd)
                {
                    await into.GetStream().FlushAsync();
                    Cut();
                    return;
                }
            }
        }
        catch (Exception broken) when (broken is IOException or SocketException or ObjectDisposedException or InvalidOperationException)
        {
            return;
        }
    }
}
