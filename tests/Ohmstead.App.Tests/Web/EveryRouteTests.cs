using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Ohmstead.App.Tests.Web;

/// <summary>
/// Every address that the program maps, found by asking the program and not from a list, asked for things that are not there, in
/// wrong types, by wrong methods and from strange pages: a new address is tried without anybody thinking of it.
/// </summary>
public sealed class EveryRouteTests : IAsyncLifetime
{
    private const string Script = "<script>alert(1)</script>";

    private static readonly string[] Methods = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE"];

    private static readonly string[] Bad =
    [
        "11111111-1111-1111-1111-111111111111",
        "00000000-0000-0000-0000-000000000000",
        "abc",
        "-1",
        "..%2f..%2fetc%2fpasswd",
        "..%5c..%5cworkshop.db",
        "%00",
        "%ff%fe",
        Uri.EscapeDataString(Script),
        "'%20OR%201=1--",
        new('a', 3000),
        new('f', 64),
    ];

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    private RunningSite site = null!;

    public async ValueTask InitializeAsync() => site = await RunningSite.OnPortAsync();

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task Whatever_is_asked_in_place_of_an_id_is_answered_in_words_and_changes_nothing()
    {
        var before = await KeptAsync();
        var tried = 0;
        foreach (var (pattern, route) in Routes())
        foreach (var bad in Bad)
        foreach (var method in Tried(route))
        {
            var path = Filled(pattern, bad);
            using var answer = await SendAsync(method, $"{path}?entry={bad}&about={bad}&words={bad}&v={bad}", Own);
            var words = method == "HEAD" ? "" : await answer.Content.ReadAsStringAsync(Stop);
            var what = $"{method} {path}: {answer.StatusCode} {words[..Math.Min(words.Length, 200)]}";
            Assert.True((int)answer.StatusCode < 500, what);
            Assert.False(words.Contains("Exception", StringComparison.Ordinal) || words.Contains("   at ", StringComparison.Ordinal), what);
            Assert.False(words.Contains(Script, StringComparison.OrdinalIgnoreCase), what);
            Assert.False(words.Contains("root:x:", StringComparison.Ordinal), what);
            tried++;
        }
        Assert.InRange(tried, 20 * Bad.Length, int.MaxValue);
        Assert.Equal(before, await KeptAsync());
    }

    [Fact]
    public async Task To_a_strange_host_or_page_no_address_says_anything()
    {
        var before = await KeptAsync();
        foreach (var (pattern, route) in Routes())
        {
            var path = Filled(pattern, site.UnitId.ToString());
            await RefusedAsync("GET", path, ("Host", "evil.test"));
            foreach (var method in Tried(route).Where(m => m is not ("GET" or "HEAD")))
            {
                await RefusedAsync(method, path);
                await RefusedAsync(method, path, ("Origin", "http://evil.test"));
                await RefusedAsync(method, path, Own, ("Sec-Fetch-Site", "cross-site"));
                await RefusedAsync(method, path, Own, ("Sec-Fetch-Site", "same-site"));
                await RefusedAsync(method, path, Own, ("Host", "evil.test"));
            }
        }
        Assert.Equal(before, await KeptAsync());
    }

    [Fact]
    public async Task A_form_or_a_file_that_no_address_wants_is_refused_by_all_of_them()
    {
        var before = await KeptAsync();
        foreach (var (pattern, _) in Routes())
        {
            var path = Filled(pattern, site.UnitId.ToString());
            foreach (
                var type in (string[])
                    ["application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "application/json", "image/svg+xml"]
            )
            {
                using var answer = await SendAsync("POST", path, Own, ("Content-Type", type));
                var what = $"POST {path} as {type}: {answer.StatusCode}";
                Assert.True((int)answer.StatusCode is >= 400 and < 500 || path.StartsWith("/_blazor", StringComparison.Ordinal), what);
            }
        }
        Assert.Equal(before, await KeptAsync());
    }

    private (string, string) Own => ("Origin", site.Address.GetLeftPart(UriPartial.Authority));

    private List<(string Pattern, RouteEndpoint Route)> Routes()
    {
        var routes = site.Get<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Select(e => ("/" + e.RoutePattern.RawText!.TrimStart('/'), e))
            .DistinctBy(r => (r.Item1, string.Join(',', Of(r.e))))
            .ToList();
        // Pages, files, photos and the connection of the screens: were they not found, nothing below would be tried.
        foreach (
            var known in (string[])
                ["/", "/units/{Id:guid}", "/kinds/{id}/sheet.json", "/units/{id:guid}/photos", "/photos/{hash}/small", "/_blazor"]
        )
            Assert.Contains(routes, r => r.Item1 == known);
        return routes;
    }

    private static IReadOnlyList<string> Of(RouteEndpoint route) => route.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? [];

    private static IEnumerable<string> Tried(RouteEndpoint route) =>
        Of(route) is { Count: > 0 } own ? own.Append("DELETE").Distinct() : Methods;

    private static string Filled(string pattern, string value) => Regex.Replace(pattern, "\\{[^}]*\\}", value);

    /// <summary>Everything kept: entries and documents.</summary>
    private async Task<string> KeptAsync()
    {
        var store = site.Bench.Store;
        var kept = new List<string>();
        foreach (var card in await store.CardsAsync(withHandedBack: true, Stop))
            kept.Add($"{card.Id} {string.Join(' ', (await store.ReadAsync(card.Id, Stop))!.Journal.Select(e => e.Id))}");
        foreach (var kind in await store.DocumentKindsAsync(Stop))
            kept.AddRange(
                (await store.DocumentsAsync(kind, Stop)).Select(d =>
                    string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{kind} {d.Id} {d.Version}")
                )
            );
        return string.Join('\n', kept);
    }

    private async Task RefusedAsync(string method, string path, params (string Name, string Value)[] headers)
    {
        using var answer = await SendAsync(method, path, headers);
        Assert.True(answer.StatusCode == HttpStatusCode.Forbidden, $"{method} {path} {string.Join(' ', headers)}: {answer.StatusCode}");
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(Stop));
    }

    private async Task<HttpResponseMessage> SendAsync(string method, string path, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        if (method is "POST" or "PUT" or "PATCH")
            request.Content = new ByteArrayContent("<svg onload=alert(1)>"u8.ToArray());
        foreach (var (name, value) in headers)
            if (!request.Headers.TryAddWithoutValidation(name, value))
                request.Content?.Headers.TryAddWithoutValidation(name, value);
        return await site.Client.SendAsync(request, Stop);
    }
}
