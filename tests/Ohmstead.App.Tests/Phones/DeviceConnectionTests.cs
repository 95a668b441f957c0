using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using Microsoft.AspNetCore.Http;
using Ohmstead.App.Phones;
using Ohmstead.App.Tests.Web;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Phones;

/// <summary>The live connection: by a ticket, once, until its device is shut out. And what speaks to the door in other ways.</summary>
public sealed class DeviceConnectionTests : DoorTest
{
    [Fact]
    public async Task A_live_connection_is_opened_by_a_ticket_once_and_by_nothing_else()
    {
        await PairAsync(Work);
        Assert.Equal(401, await SocketAsync(""));
        Assert.Equal(401, await SocketAsync("?access_token=0123456789abcdef0123456789abcdef"));
        var ticket = (await Tablet.ProveAsync("live")).Text;
        Assert.Equal(403, await SocketAsync($"?access_token={ticket}", "https://evil.test"));
        Assert.Equal(403, await SocketAsync($"?access_token={ticket}", ""));
        Assert.Equal(101, await SocketAsync($"?access_token={ticket}"));
        Assert.Equal(401, await SocketAsync($"?access_token={ticket}"));
        // A pass for pages is none for a connection, and what is no socket is refused with it.
        var pass = Tablet.Cookies.Split($"{DeviceGate.Pass}=")[1].Split(';')[0];
        Assert.Equal(401, await SocketAsync($"?access_token={pass}"));
        AssertBare(await Tablet.GetAsync("/_blazor"), 403);
        AssertBare(await Tablet.PostAsync("/_blazor/negotiate"), 403);
        // A ticket without the cookie is nothing.
        ticket = (await Tablet.ProveAsync("live")).Text;
        Assert.Equal(403, await SocketAsync($"?access_token={ticket}", cookies: ""));
    }

    [Fact]
    public async Task Shutting_out_ends_what_is_open_at_once()
    {
        await PairAsync(Work);
        var (live, book) = (Site.Get<LiveConnections>(), Site.Get<DeviceBook>());
        var device = Assert.Single(book.Devices);
        var ticket = (await Tablet.ProveAsync("live")).Text;
        using var tcp = new TcpClient();
        await using var stream = await OpenAsync(tcp);
        Assert.Equal(101, await AskForSocketAsync(stream, $"?access_token={ticket}", $"https://{Host}", Tablet.Cookies));
        Assert.True(live.Has(device.Id));
        book.Revoke(device.Id);
        // The rest of the answer's head, then the end.
        var rest = new byte[4096];
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        patience.CancelAfter(TimeSpan.FromSeconds(10));
        try
        {
            while (await stream.ReadAsync(rest, patience.Token) > 0) { }
        }
        catch (IOException)
        {
            // Cut off is an end too.
        }
        Assert.False(patience.IsCancellationRequested);
        while (live.Has(device.Id))
            await Task.Delay(10, patience.Token);
    }

    /// <summary>Between the look into the book and the moment from which it can be ended, its device is shut out.</summary>
    [Theory]
    [InlineData(true, 403, false)]
    [InlineData(false, 200, true)]
    public async Task A_connection_that_is_being_opened_while_its_device_is_shut_out_is_not_opened(
        bool isShutOut,
        int status,
        bool isOpened
    )
    {
        await PairAsync(Work);
        var (book, opened) = (Site.Get<DeviceBook>(), false);
        var device = Assert.Single(book.Devices);
        var context = new DefaultHttpContext { RequestServices = Site.Get<IServiceProvider>() };
        var (request, connection) = (context.Request, context.Connection);
        (connection.RemoteIpAddress, connection.LocalIpAddress) = (IPAddress.Loopback, IPAddress.Loopback);
        (request.Method, request.Scheme, request.Path, request.Host) = ("GET", "https", "/_blazor", new HostString(Host));
        request.QueryString = new QueryString($"?access_token={(await Tablet.ProveAsync("live")).Text}");
        (request.Headers.Upgrade, request.Headers.Origin, request.Headers.Cookie) = ("websocket", $"https://{Host}", Tablet.Cookies);
        context.Items = new Gap(() =>
        {
            if (isShutOut)
                book.Revoke(device.Id);
        });
        await Site.Get<DeviceGate>()
            .AdmitAsync(
                context,
                _ =>
                {
                    opened = true;
                    return Task.CompletedTask;
                }
            );
        Assert.Equal((status, isOpened), (context.Response.StatusCode, opened));
    }

    [Fact]
    public async Task Strange_hosts_and_pages_are_refused_with_every_secret_in_hand()
    {
        await PairAsync(Work);
        var path = $"/units/{Site.UnitId}/photos?entry={Guid.CreateVersion7()}";
        AssertBare(await SendAsync("GET", "/", Tablet.Cookies, null, ("Host", "evil.test")), 403);
        AssertBare(await SendAsync("GET", "/", Tablet.Cookies, null, ("Host", $"localhost:{Port}")), 403);
        AssertBare(await SendAsync("POST", path, Tablet.Cookies, "{}", ("Origin", "https://evil.test")), 403);
        AssertBare(await SendAsync("POST", path, Tablet.Cookies, "{}", ("Origin", $"http://{Host}")), 403);
        AssertBare(await SendAsync("POST", path, Tablet.Cookies, "{}", ("Sec-Fetch-Site", "cross-site")), 403);
        AssertBare(await SendAsync("POST", "/proof/challenge", Tablet.Cookies, null, ("Origin", "https://evil.test")), 403);
        Assert.Single((await Site.Bench.ReadAsync(Site.UnitId))!.Journal);
    }

    [Fact]
    public async Task Plain_http_is_for_this_machine_and_no_device_can_speak_it()
    {
        using var plain = new TcpClient();
        await plain.ConnectAsync(IPAddress.Loopback, Site.DeviceAddress.Port, Stop);
        await plain.GetStream().WriteAsync(Encoding.ASCII.GetBytes($"GET / HTTP/1.1\r\nHost: {Host}\r\n\r\n"), Stop);
        var answer = new byte[64];
        int read;
        try
        {
            read = await plain.GetStream().ReadAsync(answer, Stop);
        }
        catch (IOException)
        {
            read = 0;
        }
        Assert.DoesNotContain("HTTP/1.1 200", Encoding.ASCII.GetString(answer, 0, read), StringComparison.Ordinal);
        // The plain door is bound to the loopback address alone.
        Assert.Equal("127.0.0.1", Site.Address.Host);
        foreach (var address in LanAddresses.All())
        {
            using var near = new TcpClient();
            await Assert.ThrowsAnyAsync<SocketException>(async () => await near.ConnectAsync(address, Site.Address.Port, Stop));
        }
    }

    [Fact]
    public async Task A_device_that_trusts_the_root_is_content_with_the_certificate()
    {
        await PairAsync(Work);
        var file = Site.Get<LanDoor>().Certificate.RootFile;
        using var root = X509CertificateLoader.LoadCertificate(file);
        var policy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck };
        policy.CustomTrustStore.Add(root);
        using var handler = new SocketsHttpHandler { SslOptions = { CertificateChainPolicy = policy } };
        using var trusting = new HttpClient(handler) { BaseAddress = Site.DeviceAddress };
        using var answer = await trusting.GetAsync(new Uri("/", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        using var strange = new HttpClient { BaseAddress = Site.DeviceAddress };
        await Assert.ThrowsAsync<HttpRequestException>(() => strange.GetAsync(new Uri("/", UriKind.Relative), Stop));
    }

    private async Task<int> SocketAsync(string question, string? origin = null, string? cookies = null)
    {
        using var tcp = new TcpClient();
        await using var stream = await OpenAsync(tcp);
        return await AskForSocketAsync(stream, question, origin ?? $"https://{Host}", cookies ?? Tablet.Cookies);
    }

    private async Task<SslStream> OpenAsync(TcpClient tcp)
    {
        await tcp.ConnectAsync(IPAddress.Loopback, Site.DeviceAddress.Port, Stop);
        var stream = new SslStream(tcp.GetStream());
        await stream.AuthenticateAsClientAsync(
            new SslClientAuthenticationOptions
            {
                TargetHost = "127.0.0.1",
                RemoteCertificateValidationCallback = (_, shown, _, _) => IsOurs(shown),
            },
            Stop
        );
        return stream;
    }

    private async Task<int> AskForSocketAsync(SslStream stream, string question, string origin, string cookies)
    {
        var request =
            $"GET /_blazor{question} HTTP/1.1\r\nHost: {Host}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Version: 13\r\n"
            + $"Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n{(origin.Length > 0 ? $"Origin: {origin}\r\n" : "")}"
            + $"{(cookies.Length > 0 ? $"Cookie: {cookies}\r\n" : "")}\r\n";
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request), Stop);
        var line = new byte[12];
        await stream.ReadExactlyAsync(line, Stop);
        return int.Parse(Encoding.ASCII.GetString(line)[9..], System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>What a request has with it; something happens as the gate writes down who asks.</summary>
    private sealed class Gap(Action then) : Dictionary<object, object?>, IDictionary<object, object?>
    {
        object? IDictionary<object, object?>.this[object key]
        {
            get => this.GetValueOrDefault(key);
            set
            {
                this[key] = value;
                then();
            }
        }
    }
}
