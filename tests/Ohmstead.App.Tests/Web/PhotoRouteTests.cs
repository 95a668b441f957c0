using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Web;

public sealed class PhotoRouteTests : IAsyncLifetime
{
    // The smallest PNG: one pixel.
    internal static readonly byte[] Pixel = Convert.FromBase64String(
        "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg=="
    );

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    private RunningSite site = null!;

    public async ValueTask InitializeAsync() => site = await RunningSite.OnPortAsync();

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task A_photo_sent_twice_is_kept_once_and_can_be_fetched()
    {
        var path = $"/units/{site.UnitId}/photos?entry={Guid.CreateVersion7()}&about=cord&title=plug";
        var hash = await SendAsync(path, Pixel, HttpStatusCode.OK);
        Assert.Equal(hash, await SendAsync(path, Pixel, HttpStatusCode.OK));
        var (_, photo) = Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.All<PhotoAdded>());
        Assert.Equal((hash, "plug", "cord"), (photo.Photo, photo.Title, photo.About));
        using var back = await site.Client.GetAsync(new Uri($"/photos/{hash}", UriKind.Relative), Stop);
        Assert.Equal("image/png", back.Content.Headers.ContentType!.MediaType);
        Assert.Equal(Pixel, await back.Content.ReadAsByteArrayAsync(Stop));
    }

    [Fact]
    public async Task What_is_no_photo_is_refused_in_words_and_leaves_nothing()
    {
        var words = await SendAsync(
            $"/units/{site.UnitId}/photos?entry={Guid.CreateVersion7()}",
            "<svg onload=alert(1)>"u8.ToArray(),
            HttpStatusCode.BadRequest
        );
        Assert.Contains("Not saved", words, StringComparison.Ordinal);
        Assert.Single((await site.Bench.ReadAsync(site.UnitId))!.Journal);
    }

    [Fact]
    public async Task A_unit_that_is_not_there_takes_no_photo()
    {
        var words = await SendAsync($"/units/{Guid.CreateVersion7()}/photos?entry={Guid.CreateVersion7()}", Pixel, HttpStatusCode.NotFound);
        Assert.Contains("unit", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_entry_without_a_number_is_refused_in_words()
    {
        var words = await SendAsync($"/units/{site.UnitId}/photos?entry=7", Pixel, HttpStatusCode.BadRequest);
        Assert.NotEmpty(words);
        Assert.DoesNotContain("Exception", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_hundred_megabytes_are_refused_before_they_are_sent()
    {
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, site.Address.Port, Stop);
        var stream = client.GetStream();
        await stream.WriteAsync(
            Encoding.ASCII.GetBytes(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"POST /units/{site.UnitId}/photos?entry={Guid.CreateVersion7()} HTTP/1.1\r\nHost: 127.0.0.1:{site.Address.Port}\r\nOrigin: http://127.0.0.1:{site.Address.Port}\r\nContent-Length: 200000000\r\n\r\n"
                )
            ),
            Stop
        );
        // Not a byte of the body is sent: an answer that waited for it would never come.
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(2));
        using var reader = new StreamReader(stream);
        Assert.Equal("HTTP/1.1 413 Payload Too Large", await reader.ReadLineAsync(limit.Token));
        var words = new StringBuilder();
        while (
            await reader.ReadLineAsync(limit.Token) is { } line && !words.ToString().Contains("larger than 40 MB", StringComparison.Ordinal)
        )
            words.AppendLine(line);
        Assert.Contains("larger than 40 MB", words.ToString(), StringComparison.Ordinal);
    }

    private async Task<string> SendAsync(string path, byte[] body, HttpStatusCode expected)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new ByteArrayContent(body) };
        request.Headers.Add("Origin", site.Address.GetLeftPart(UriPartial.Authority));
        using var answer = await site.Client.SendAsync(request, Stop);
        Assert.Equal(expected, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Stop);
    }
}
