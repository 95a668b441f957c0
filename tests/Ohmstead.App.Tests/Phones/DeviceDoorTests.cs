using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using Ohmstead.App.Phones;
using Ohmstead.App.Tests.Web;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Phones;

/// <summary>The encrypted door on a real port, with a real handshake: what somebody on the club's network gets, and what a paired tablet.</summary>
public sealed class DeviceDoorTests : IAsyncLifetime
{
    private static readonly DeviceRights Work = new(null, MayWork: true, TimeSpan.FromDays(7));
    private RunningSite site = null!;
    private HttpClient client = null!;
    private Handheld tablet = null!;

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    private string Host => site.DeviceAddress.Authority;

    private LanDoor Door => site.Get<LanDoor>();

    public async ValueTask InitializeAsync()
    {
        site = await RunningSite.OnPortsAsync();
        client = new HttpClient(
            new SocketsHttpHandler
            {
                AllowAutoRedirect = false,
                UseCookies = false,
                SslOptions = { RemoteCertificateValidationCallback = (_, shown, _, _) => IsOurs(shown) },
            }
        )
        {
            BaseAddress = site.DeviceAddress,
        };
        tablet = new Handheld(Host, SendAsync);
    }

    public async ValueTask DisposeAsync()
    {
        tablet.Dispose();
        client.Dispose();
        await site.DisposeAsync();
    }

    public static TheoryData<string> Places() =>
        [
            "/",
            "/shop",
            "/devices",
            "/search?words=hums",
            "/units/UNIT",
            "/units/UNIT/papers/service-record.pdf",
            "/photos/0000000000000000000000000000000000000000000000000000000000000000",
            "/kinds/twin-175/sheet.json",
            "/ohmstead.css",
            "/ohmstead.js",
            "/blazor.web.js",
            "/devices/certificate.crt",
            "/phone",
            "/proof",
            "/_blazor",
            "/_blazor/negotiate",
            "/_blazor/initializers",
            "/pair",
            "/pair/",
            "/pair/AAAA-AAAA",
            "/nothing",
        ];

    [Theory]
    [MemberData(nameof(Places))]
    public async Task Without_a_code_no_address_says_anything(string place)
    {
        foreach (var method in (string[])["GET", "POST"])
            AssertBare(await SendAsync(method, Filled(place), "", null), 403);
        AssertBare(
            await SendAsync("GET", Filled(place), $"{DeviceGate.Cookie}=0123456789abcdef; {DeviceGate.Pass}=0123456789abcdef", null),
            403
        );
    }

    [Fact]
    public async Task The_cookie_alone_gets_the_page_on_which_the_key_is_proved_and_nothing_else()
    {
        await PairAsync(Work);
        tablet.LosePass();
        foreach (var place in Places().Select(p => Filled(p.Data)).Where(p => !IsOpenToCookies(p)))
        {
            var page = await tablet.GetAsync(place);
            Assert.Equal(401, page.Status);
            Assert.DoesNotContain("F-7", page.Text, StringComparison.Ordinal);
            Assert.True(page.Text.Length == 0 || page.Text.Contains("proves that it is the device", StringComparison.Ordinal), place);
        }
        AssertBare(await tablet.PostAsync($"/units/{site.UnitId}/photos?entry={Guid.CreateVersion7()}"), 401);
        // Whoever copied the cookies has not the key.
        tablet.LoseKey();
        AssertBare(await tablet.ProveAsync("page"), 403);
        AssertBare(await tablet.ProveAsync("live"), 403);
        Assert.Equal(401, (await tablet.GetAsync("/")).Status);
    }

    [Fact]
    public async Task A_paired_tablet_has_the_bench_until_it_is_shut_out()
    {
        await PairAsync(Work);
        Assert.Contains("F-7", (await tablet.GetAsync("/")).Text, StringComparison.Ordinal);
        tablet.LosePass();
        Assert.Equal((200, "/"), Two(await tablet.ProveAsync("page")));
        Assert.Contains("data-device=\"work\"", (await tablet.GetAsync($"/units/{site.UnitId}")).Text, StringComparison.Ordinal);
        Assert.Equal(200, (await tablet.GetAsync("/devices/certificate.crt")).Status);
        site.Get<DeviceBook>().Revoke(site.Get<DeviceBook>().Devices.Single().Id);
        foreach (var place in Places())
            AssertBare(await tablet.GetAsync(Filled(place.Data)), 403);
    }

    [Fact]
    public async Task A_code_is_used_up_and_a_key_that_does_not_sign_it_gets_nothing()
    {
        var code = site.Get<PairingCodes>().New(Work).Text;
        Assert.Contains("Pair this device", (await tablet.GetAsync($"/pair/{code}")).Text, StringComparison.Ordinal);
        Assert.Equal(200, (await tablet.GetAsync($"/pair/{code}/ohmstead.js")).Status);
        Assert.Equal(400, (await tablet.PairAsync(code, signed: "something else")).Status);
        Assert.Equal(400, (await tablet.PairAsync(code, print: new string('0', PairingDesk.PrintLetters))).Status);
        Assert.Empty(site.Get<DeviceBook>().Devices);
        Assert.Equal((200, "/"), Two(await tablet.PairAsync(code, print: PairingDesk.Short(Door.Certificate.Print))));
        AssertBare(await tablet.PairAsync(code), 403);
        AssertBare(await tablet.GetAsync($"/pair/{code}"), 403);
        AssertBare(await tablet.GetAsync($"/pair/{code}/ohmstead.js"), 403);
        Assert.Equal("Tablet at the vise", Assert.Single(site.Get<DeviceBook>().Devices).Name);
    }

    [Fact]
    public async Task Cookies_go_over_this_way_alone_and_to_no_script()
    {
        var answer = await tablet.PairAsync(site.Get<PairingCodes>().New(Work).Text);
        Assert.Equal(2, answer.SetCookies.Count);
        foreach (var cookie in answer.SetCookies)
        {
            Assert.StartsWith("__Host-", cookie, StringComparison.Ordinal);
            foreach (var word in (string[])["secure", "httponly", "samesite=strict", "path=/"])
                Assert.Contains(word, cookie, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("domain", cookie, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public async Task A_live_connection_is_opened_by_a_ticket_once_and_by_nothing_else()
    {
        await PairAsync(Work);
        Assert.Equal(401, await SocketAsync(""));
        Assert.Equal(401, await SocketAsync("?access_token=0123456789abcdef0123456789abcdef"));
        var ticket = (await tablet.ProveAsync("live")).Text;
        Assert.Equal(403, await SocketAsync($"?access_token={ticket}", "https://evil.test"));
        Assert.Equal(403, await SocketAsync($"?access_token={ticket}", ""));
        Assert.Equal(101, await SocketAsync($"?access_token={ticket}"));
        Assert.Equal(401, await SocketAsync($"?access_token={ticket}"));
        // A pass for pages is none for a connection, and what is no socket is refused with it.
        var pass = tablet.Cookies.Split($"{DeviceGate.Pass}=")[1].Split(';')[0];
        Assert.Equal(401, await SocketAsync($"?access_token={pass}"));
        AssertBare(await tablet.GetAsync("/_blazor"), 403);
        AssertBare(await tablet.PostAsync("/_blazor/negotiate"), 403);
        // A ticket without the cookie is nothing.
        ticket = (await tablet.ProveAsync("live")).Text;
        Assert.Equal(403, await SocketAsync($"?access_token={ticket}", cookies: ""));
    }

    [Fact]
    public async Task Shutting_out_ends_what_is_open_at_once()
    {
        await PairAsync(Work);
        var (live, book) = (site.Get<LiveConnections>(), site.Get<DeviceBook>());
        var device = Assert.Single(book.Devices);
        var ticket = (await tablet.ProveAsync("live")).Text;
        using var tcp = new TcpClient();
        await using var stream = await OpenAsync(tcp);
        Assert.Equal(101, await AskForSocketAsync(stream, $"?access_token={ticket}", $"https://{Host}", tablet.Cookies));
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

    [Fact]
    public async Task Strange_hosts_and_pages_are_refused_with_every_secret_in_hand()
    {
        await PairAsync(Work);
        var path = $"/units/{site.UnitId}/photos?entry={Guid.CreateVersion7()}";
        AssertBare(await SendAsync("GET", "/", tablet.Cookies, null, ("Host", "evil.test")), 403);
        AssertBare(await SendAsync("GET", "/", tablet.Cookies, null, ("Host", $"localhost:{Port}")), 403);
        AssertBare(await SendAsync("POST", path, tablet.Cookies, "{}", ("Origin", "https://evil.test")), 403);
        AssertBare(await SendAsync("POST", path, tablet.Cookies, "{}", ("Origin", $"http://{Host}")), 403);
        AssertBare(await SendAsync("POST", path, tablet.Cookies, "{}", ("Sec-Fetch-Site", "cross-site")), 403);
        AssertBare(await SendAsync("POST", "/proof/challenge", tablet.Cookies, null, ("Origin", "https://evil.test")), 403);
        Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.Journal);
    }

    [Fact]
    public async Task Plain_http_is_for_this_machine_and_no_device_can_speak_it()
    {
        using var plain = new TcpClient();
        await plain.ConnectAsync(IPAddress.Loopback, site.DeviceAddress.Port, Stop);
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
        Assert.Equal("127.0.0.1", site.Address.Host);
        foreach (var address in LanAddresses.All())
        {
            using var near = new TcpClient();
            await Assert.ThrowsAnyAsync<SocketException>(async () => await near.ConnectAsync(address, site.Address.Port, Stop));
        }
    }

    [Fact]
    public async Task A_device_that_trusts_the_root_is_content_with_the_certificate()
    {
        await PairAsync(Work);
        var file = site.Get<LanDoor>().Certificate.RootFile;
        using var root = X509CertificateLoader.LoadCertificate(file);
        var policy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck };
        policy.CustomTrustStore.Add(root);
        using var handler = new SocketsHttpHandler { SslOptions = { CertificateChainPolicy = policy } };
        using var trusting = new HttpClient(handler) { BaseAddress = site.DeviceAddress };
        using var answer = await trusting.GetAsync(new Uri("/", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        using var strange = new HttpClient { BaseAddress = site.DeviceAddress };
        await Assert.ThrowsAsync<HttpRequestException>(() => strange.GetAsync(new Uri("/", UriKind.Relative), Stop));
    }

    [Fact]
    public async Task A_tablet_that_may_only_look_enters_nothing_by_any_way_and_its_page_says_so()
    {
        await PairAsync(Work with { MayWork = false });
        var page = await tablet.GetAsync($"/units/{site.UnitId}");
        Assert.Contains("This device may only look.", page.Text, StringComparison.Ordinal);
        var kept = $$"""{"id":"{{Guid.CreateVersion7()}}","reading":"blades","shown":"3.6","secondsAgo":2}""";
        Assert.Equal(403, (await tablet.PostAsync($"/units/{site.UnitId}/kept", kept)).Status);
        Assert.Equal(403, (await tablet.PostAsync($"/units/{site.UnitId}/photos?entry={Guid.CreateVersion7()}", "photo")).Status);
        Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.Journal);
        var book = site.Get<DeviceBook>();
        book.Let(book.Devices.Single().Id, work: true);
        Assert.Equal(200, (await tablet.PostAsync($"/units/{site.UnitId}/kept", kept)).Status);
        var entry = (await site.Bench.ReadAsync(site.UnitId))!.All<ReadingEntered>().Single().Entry;
        Assert.Equal((book.Devices.Single().Mark, "Tablet at the vise"), (entry.Bench, entry.By));
        Assert.NotEqual(site.Bench.Store.Bench, entry.Bench);
    }

    [Fact]
    public async Task Guessing_codes_ends_after_a_few()
    {
        var code = site.Get<PairingCodes>().New(Work).Text;
        for (var n = 0; n < PairingCodes.MostOfAddress; n++)
            AssertBare(await tablet.GetAsync("/pair/AAAA-AAAA"), 403);
        AssertBare(await tablet.GetAsync($"/pair/{code}"), 403);
        Assert.NotNull(site.Get<PairingCodes>().Find(code, "another address"));
    }

    private async Task PairAsync(DeviceRights rights) =>
        Assert.Equal((200, "/"), Two(await tablet.PairAsync(site.Get<PairingCodes>().New(rights).Text)));

    private static (int, string) Two(Answered answer) => (answer.Status, answer.Text);

    private string Filled(string place) => place.Replace("UNIT", site.UnitId.ToString(), StringComparison.Ordinal);

    private string Port => site.DeviceAddress.Port.ToString(System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Scripts and styles of the page on which the key is proved; where it is proved; where a code is asked for.</summary>
    private static bool IsOpenToCookies(string place) =>
        place is "/ohmstead.css" or "/ohmstead.js" or "/blazor.web.js" or "/proof" || place.StartsWith("/pair", StringComparison.Ordinal);

    private static void AssertBare(Answered answer, int status) => Assert.Equal((status, ""), Two(answer));

    private bool IsOurs(X509Certificate? shown) =>
        shown is not null
        && string.Equals(
            shown.GetCertHashString(HashAlgorithmName.SHA256),
            Door.Certificate.Print.Replace(":", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );

    private Task<Answered> SendAsync(string method, string path, string cookies, string? body) =>
        SendAsync(method, path, cookies, body, ("", ""));

    private async Task<Answered> SendAsync(string method, string path, string cookies, string? body, (string Name, string Value) other)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        request.Headers.Accept.ParseAdd("text/html");
        if (cookies.Length > 0)
            request.Headers.Add("Cookie", cookies);
        if (body is not null || method == "POST")
            request.Content = new StringContent(body ?? "", Encoding.UTF8, "application/json");
        if (method == "POST" && other.Name != "Origin")
            request.Headers.Add("Origin", $"https://{Host}");
        if (other.Name.Length > 0)
            request.Headers.TryAddWithoutValidation(other.Name, other.Value);
        using var answer = await client.SendAsync(request, Stop);
        return new(
            (int)answer.StatusCode,
            await answer.Content.ReadAsStringAsync(Stop),
            answer.Headers.TryGetValues("Set-Cookie", out var set) ? [.. set] : []
        );
    }

    private async Task<int> SocketAsync(string question, string? origin = null, string? cookies = null)
    {
        using var tcp = new TcpClient();
        await using var stream = await OpenAsync(tcp);
        return await AskForSocketAsync(stream, question, origin ?? $"https://{Host}", cookies ?? tablet.Cookies);
    }

    private async Task<SslStream> OpenAsync(TcpClient tcp)
    {
        await tcp.ConnectAsync(IPAddress.Loopback, site.DeviceAddress.Port, Stop);
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
}
