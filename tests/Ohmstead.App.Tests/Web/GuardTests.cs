using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Ohmstead.App.Tests.Web;

/// <summary>Pages of other sites, and whatever is no browser on this machine, neither read nor write here.</summary>
public sealed class GuardTests : IAsyncLifetime
{
    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    /// <summary>What stands on the page of an address that leads nowhere.</summary>
    private const string Nothing = "No unit, type or page of this workshop has this address.";

    private RunningSite site = null!;

    public async ValueTask InitializeAsync() => site = await RunningSite.OnPortAsync();

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Theory]
    [InlineData("evil.test")]
    [InlineData("127.0.0.1.evil.test")]
    [InlineData("192.168.7.2")]
    [InlineData("localhost.")]
    public async Task A_name_that_is_not_this_machines_is_refused(string host)
    {
        using var answer = await SendAsync(HttpMethod.Get, "/", ("Host", host));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(Stop));
    }

    [Theory]
    [InlineData("127.0.0.1")]
    [InlineData("localhost")]
    public async Task Its_own_names_are_served(string host)
    {
        using var answer = await SendAsync(HttpMethod.Get, "/", ("Host", $"{host}:{Port}"));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Theory]
    [InlineData("http://evil.test")]
    [InlineData("null")]
    [InlineData("https://127.0.0.1")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("")]
    public async Task A_post_from_another_page_is_refused(string origin)
    {
        using var answer = await SendAsync(
            HttpMethod.Post,
            $"/units/{site.UnitId}/photos?entry={Guid.CreateVersion7()}",
            ("Origin", origin)
        );
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.Journal);
    }

    [Theory]
    [InlineData("http://evil.test", 403)]
    [InlineData("", 403)]
    [InlineData("own", 101)]
    public async Task A_socket_is_opened_for_a_page_of_this_address_alone(string origin, int status)
    {
        var own = origin == "own" ? $"http://127.0.0.1:{Port}" : origin;
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, int.Parse(Port, System.Globalization.CultureInfo.InvariantCulture), Stop);
        var request =
            $"GET /_blazor HTTP/1.1\r\nHost: 127.0.0.1:{Port}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Version: 13\r\n"
            + $"Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n{(own.Length > 0 ? $"Origin: {own}\r\n" : "")}\r\n";
        await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(request), Stop);
        var line = new byte[12];
        await client.GetStream().ReadExactlyAsync(line, Stop);
        Assert.Equal($"HTTP/1.1 {status.ToString(System.Globalization.CultureInfo.InvariantCulture)}", Encoding.ASCII.GetString(line));
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/ohmstead.css")]
    [InlineData("/nothing-here")]
    [InlineData("/units/abc")]
    public async Task Every_answer_says_what_a_browser_may_do_with_it(string path)
    {
        using var answer = await SendAsync(HttpMethod.Get, path);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("script-src 'self'", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-eval", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Theory]
    [InlineData("/units/11111111-1111-1111-1111-111111111111", 404, Nothing)]
    [InlineData("/units/11111111-1111-1111-1111-111111111111/findings", 404, Nothing)]
    [InlineData("/units/abc", 400, "No unit has this address")]
    [InlineData("/units/1/look-over", 400, "No unit has this address")]
    [InlineData("/nothing", 404, Nothing)]
    [InlineData("/phone", 404, Nothing)]
    [InlineData("/../../etc/passwd", 404, Nothing)]
    [InlineData("/css/", 404, Nothing)]
    [InlineData("/photos/abc", 400, "No photo has this address.")]
    public async Task An_address_of_nothing_is_answered_in_words(string path, int status, string said)
    {
        using var answer = await SendAsync(HttpMethod.Get, path, ("Accept", "text/html"));
        Assert.Equal(status, (int)answer.StatusCode);
        var words = await answer.Content.ReadAsStringAsync(Stop);
        Assert.DoesNotContain("Exception", words, StringComparison.Ordinal);
        Assert.Contains(said, words, StringComparison.Ordinal);
    }

    [Fact]
    public void No_key_is_written_into_the_users_home() =>
        Assert.DoesNotContain(
            site.Get<IEnumerable<Microsoft.Extensions.Hosting.IHostedService>>(),
            s => s.GetType().FullName!.Contains("DataProtection", StringComparison.Ordinal)
        );

    [Fact]
    public async Task Script_in_what_was_entered_is_shown_as_text()
    {
        var id = await site.TakeInAsync("<script>alert(1)</script>");
        foreach (var path in (string[])["/", $"/units/{id}", "/search?words=%3Cscript%3Ealert(1)%3C/script%3E"])
        {
            using var answer = await SendAsync(HttpMethod.Get, path);
            var page = await answer.Content.ReadAsStringAsync(Stop);
            Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_page_with_all_it_needs_is_less_than_300_KB()
    {
        var (bytes, page) = await SizeAsync("/");
        var linked = System
            .Text.RegularExpressions.Regex.Matches(page, "(?:href|src)=\"(/[^\"]*\\.(?:css|js|svg|woff2)[^\"]*)\"")
            .Select(m => m.Groups[1].Value)
            .ToList();
        Assert.Contains(linked, l => l.StartsWith("/blazor.web.js", StringComparison.Ordinal));
        foreach (var path in linked.Append("/atkinson-next-700.woff2"))
            bytes += (await SizeAsync(path)).Bytes;
        Assert.InRange(bytes, 60_000, 300_000);
    }

    private string Port => site.Address.Port.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private async Task<(long Bytes, string Text)> SizeAsync(string path)
    {
        using var answer = await SendAsync(HttpMethod.Get, path, ("Accept-Encoding", "gzip"));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var body = await answer.Content.ReadAsByteArrayAsync(Stop);
        return (body.Length, Encoding.UTF8.GetString(body));
    }

    private async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(method, path);
        foreach (var (name, value) in headers)
            if (value.Length > 0)
                request.Headers.TryAddWithoutValidation(name, value);
        return await site.Client.SendAsync(request, Stop);
    }
}
