using System.Net;
using Ohmstead.Storage.Zips;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Web;

/// <summary>Recordings of the hum, through the route that the page posts to.</summary>
public sealed class HumRouteTests : IAsyncLifetime
{
    /// <summary>The beginning of a phone's recording; the sound in it is nobody's business but the browser's.</summary>
    private static readonly byte[] Phone = [0, 0, 0, 24, .. "ftypM4A isom"u8, .. new byte[64]];

    /// <summary>No zip is older than 1980.</summary>
    private static readonly DateTimeOffset Day = new(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    private RunningSite site = null!;

    public async ValueTask InitializeAsync() => site = await RunningSite.OnPortAsync();

    public ValueTask DisposeAsync() => site.DisposeAsync();

    private async Task<string> SendAsync(string path, byte[] body, HttpStatusCode expected = HttpStatusCode.OK)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(path, UriKind.Relative))
        {
            Content = new ByteArrayContent(body),
        };
        // What is too large is refused before it is sent.
        request.Headers.ExpectContinue = body.Length > 1_000_000;
        request.Headers.Add("Origin", site.Address.GetLeftPart(UriPartial.Authority));
        using var answer = await site.Client.SendAsync(request, Stop);
        var words = await answer.Content.ReadAsStringAsync(Stop);
        Assert.True(expected == answer.StatusCode, words);
        return words;
    }

    private string At(string query, string below = "") => $"/units/{site.UnitId}/recordings{below}?entry={Guid.CreateVersion7()}{query}";

    private async Task<HumRecorded[]> KeptAsync() => [.. (await site.Bench.ReadAsync(site.UnitId))!.All<HumRecorded>().Select(h => h.Fact)];

    [Fact]
    public async Task A_wav_is_listened_to_and_kept_as_it_came()
    {
        var wav = MadeHum.Wav(8000, 6000);
        var hash = await SendAsync(At("&as=idle"), wav);
        var kept = Assert.Single(await KeptAsync());
        Assert.Equal((HumState.Idle, hash, hash), (kept.As, kept.Recording, kept.Wav));
        // Line 8 at three quarters of line 2 is 2.5 dB below it: within the 10 dB that make a buzz.
        Assert.Equal(["hum", "buzz"], kept.Heard);
        using var back = await site.Client.GetAsync(new Uri($"/photos/{hash}", UriKind.Relative), Stop);
        Assert.Equal("audio/wav", back.Content.Headers.ContentType!.MediaType);
        Assert.Equal(wav, await back.Content.ReadAsByteArrayAsync(Stop));
    }

    [Fact]
    public async Task What_the_page_made_of_a_phones_recording_is_kept_beside_it_and_goes_out_with_the_unit()
    {
        var wav = await SendAsync($"/units/{site.UnitId}/recordings/wav", MadeHum.Wav(8000));
        Assert.Empty(await KeptAsync());
        var raw = await SendAsync(At($"&as=lifted&wav={wav}"), Phone);
        var kept = Assert.Single(await KeptAsync());
        Assert.Equal((HumState.Lifted, raw, wav), (kept.As, kept.Recording, kept.Wav));
        Assert.NotEqual(raw, wav);
        using var zip = new MemoryStream();
        var written = await ZipOut.WriteUnitAsync(zip, site.UnitId, site.Bench.Store, site.Bench.Photos, Day, Stop);
        Assert.Equal((2, 0), (written!.Photos, written.MissingPhotos.Count));
        await using var other = await RunningSite.OnPortAsync();
        var taken = await ZipIn.TakeAsync(zip, other.Bench.Store, other.Bench.Photos, Day, new(), DifferingDocuments.KeepMine, Stop);
        Assert.Empty(taken.Problems);
        foreach (var (hash, bytes) in ((string, byte[])[])[(raw, Phone), (wav, MadeHum.Wav(8000))])
        {
            using var back = await other.Client.GetAsync(new Uri($"/photos/{hash}", UriKind.Relative), Stop);
            Assert.Equal(bytes, await back.Content.ReadAsByteArrayAsync(Stop));
        }
    }

    [Fact]
    public async Task What_cannot_be_listened_to_is_refused_in_words_and_enters_nothing()
    {
        var wav = await SendAsync($"/units/{site.UnitId}/recordings/wav", MadeHum.Wav(8000));
        (string Path, byte[] Body, string Word)[] wrong =
        [
            (At("&as=idle"), MadeHum.Wav(8000, seconds: 3), "too short. Record for 4 seconds or more"),
            (At("&as=idle"), "no sound at all, but words"u8.ToArray(), "no recording Ohmstead knows"),
            (At("&as=idle"), PhotoRouteTests.Pixel, "no recording Ohmstead knows"),
            (At("&as=idle"), Phone, "not a WAV"),
            (At("&as=loud"), MadeHum.Wav(8000), "Say whether it ran with no load"),
            (At($"&as=idle&wav={new string('f', 64)}"), Phone, "Choose the recording again"),
            (At("&as=idle&wav=../../etc"), Phone, "No recording has this address"),
            ($"/units/{site.UnitId}/recordings/wav", Phone, "not a WAV"),
        ];
        foreach (var (path, body, word) in wrong)
            Assert.Contains(word, await SendAsync(path, body, HttpStatusCode.BadRequest), StringComparison.Ordinal);
        await SendAsync($"/units/{Guid.CreateVersion7()}/recordings/wav", MadeHum.Wav(8000), HttpStatusCode.NotFound);
        Assert.Empty(await KeptAsync());
        Assert.NotEmpty(wav);
    }

    [Fact]
    public async Task A_recording_is_no_photo()
    {
        var words = await SendAsync(
            $"/units/{site.UnitId}/photos?entry={Guid.CreateVersion7()}",
            MadeHum.Wav(8000),
            HttpStatusCode.BadRequest
        );
        Assert.Contains("this is a recording, not a picture", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task More_than_forty_megabytes_are_refused_kindly()
    {
        var words = await SendAsync(At("&as=idle"), new byte[40_000_001], HttpStatusCode.RequestEntityTooLarge);
        Assert.Contains("Ten seconds will do.", words, StringComparison.Ordinal);
    }
}
