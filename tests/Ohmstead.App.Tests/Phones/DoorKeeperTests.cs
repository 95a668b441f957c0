using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Connections;
using Ohmstead.App.Phones;

namespace Ohmstead.App.Tests.Phones;

/// <summary>So many connections of one address, so many of all; one that ends makes room for another.</summary>
public sealed class DoorKeeperTests
{
    private readonly DoorKeeper keeper = new();
    private readonly TaskCompletionSource end = new();

    [Fact]
    public async Task One_address_opens_no_more_than_its_share_and_others_are_let_in_all_the_same()
    {
        var held = new List<Task>();
        for (var n = 0; n < DoorKeeper.MostOfAddress; n++)
            held.Add(Come("192.168.7.9", out _));
        await Come("192.168.7.9", out var more);
        // Written the other way it is the same address.
        await Come("::ffff:192.168.7.9", out var same);
        Assert.True(more.IsAborted && same.IsAborted);
        held.Add(Come("192.168.7.10", out var other));
        Assert.False(other.IsAborted);
        Assert.All(held, h => Assert.False(h.IsCompleted));
        end.SetResult();
        await Task.WhenAll(held);
        await Come("192.168.7.9", out var later);
        Assert.False(later.IsAborted);
    }

    [Fact]
    public async Task All_together_open_no_more_than_the_door_holds()
    {
        var held = new List<Task>();
        for (var n = 0; n < DoorKeeper.Most; n++)
            held.Add(Come(string.Create(CultureInfo.InvariantCulture, $"10.0.{n / 40}.1"), out _));
        Assert.All(held, h => Assert.False(h.IsCompleted));
        await Come("192.168.7.9", out var more);
        Assert.True(more.IsAborted);
        end.SetResult();
        await Task.WhenAll(held);
        await Come("192.168.7.9", out var later);
        Assert.False(later.IsAborted);
    }

    [Fact]
    public async Task One_that_breaks_is_not_counted_any_more()
    {
        for (var n = 0; n < 2 * DoorKeeper.MostOfAddress; n++)
            await Assert.ThrowsAsync<IOException>(() => keeper.AdmitAsync(new Came("192.168.7.9"), _ => throw new IOException()));
        _ = Come("192.168.7.9", out var later);
        Assert.False(later.IsAborted);
    }

    private Task Come(string address, out Came came)
    {
        came = new Came(address);
        return keeper.AdmitAsync(came, _ => end.Task);
    }

    private sealed class Came : DefaultConnectionContext
    {
        public Came(string address) => RemoteEndPoint = new IPEndPoint(IPAddress.Parse(address), 1);

        public bool IsAborted { get; private set; }

        public override void Abort(ConnectionAbortedException abortReason) => IsAborted = true;
    }
}
