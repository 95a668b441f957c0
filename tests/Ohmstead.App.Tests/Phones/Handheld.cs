using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Ohmstead.App.Tests.Web;

namespace Ohmstead.App.Tests.Phones;

/// <summary>A device as its browser is one: it has a key of its own, and cookies.</summary>
/// <param name="send">Method, path, cookie, JSON body; answers with status, text and the cookies that were set.</param>
internal sealed class Handheld(string host, Func<string, string, string, string?, Task<Answered>> send) : IDisposable
{
    private readonly Dictionary<string, string> cookies = new(StringComparer.Ordinal);
    private ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);

    /// <summary>What its browser sends along.</summary>
    public string Cookies => string.Join("; ", cookies.Select(c => $"{c.Key}={c.Value}"));

    /// <summary>A device whose requests are put into the site as if they came over a network.</summary>
    public static Handheld Of(RunningSite site) =>
        new(
            $"{RunningSite.OwnAddress}:{RunningSite.OwnPort.ToString(System.Globalization.CultureInfo.InvariantCulture)}",
            async (method, path, cookie, body) =>
            {
                var answer = await site.FromPhoneAsync(
                    method,
                    path,
                    cookie,
                    c =>
                    {
                        if (body is null)
                            return;
                        var bytes = Encoding.UTF8.GetBytes(body);
                        (c.Request.ContentType, c.Request.ContentLength) = ("application/json", bytes.Length);
                        c.Request.Body = new MemoryStream(bytes);
                    }
                );
                using var reader = new StreamReader(answer.Response.Body);
                return new(answer.Response.StatusCode, await reader.ReadToEndAsync(), [.. answer.Response.Headers.SetCookie!]);
            }
        );

    /// <summary>Pairs by a code.</summary>
    /// <param name="print">What stood behind the code.</param>
    public async Task<Answered> PairAsync(string code, string name = "Tablet at the vise", string print = "", string? signed = null)
    {
        var body = new
        {
            name,
            key = Convert.ToBase64String(key.ExportSubjectPublicKeyInfo()),
            signature = Sign(signed ?? $"ohmstead\npair\n{host}\n{code}"),
            print,
        };
        return await PostAsync($"/pair/{code}", JsonSerializer.Serialize(body));
    }

    /// <summary>Proves its key for pages, or for a live connection.</summary>
    /// <param name="at">Another address that it signs for; null for the one that it asks.</param>
    public async Task<Answered> ProveAsync(string use, string? at = null)
    {
        var challenge = (await PostAsync("/proof/challenge")).Text;
        return await AnswerAsync(use, challenge, Sign($"ohmstead\n{use}\n{at ?? host}\n{challenge}"));
    }

    public Task<Answered> AnswerAsync(string use, string challenge, string signature) =>
        PostAsync(
            "/proof",
            JsonSerializer.Serialize(
                new
                {
                    use,
                    challenge,
                    signature,
                }
            )
        );

    public async Task<string> ChallengeAsync() => (await PostAsync("/proof/challenge")).Text;

    public string Sign(string text) => Convert.ToBase64String(key.SignData(Encoding.UTF8.GetBytes(text), HashAlgorithmName.SHA256));

    public Task<Answered> GetAsync(string path) => SendAsync("GET", path, null);

    public Task<Answered> PostAsync(string path, string? body = null) => SendAsync("POST", path, body);

    /// <summary>The cookies were copied, the key stayed where it was.</summary>
    public void LoseKey()
    {
        key.Dispose();
        key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
    }

    /// <summary>Only the cookie that lasts is left.</summary>
    public void LosePass() => cookies.Remove(App.Phones.DeviceGate.Pass);

    public void Dispose() => key.Dispose();

    private async Task<Answered> SendAsync(string method, string path, string? body)
    {
        var answer = await send(method, path, Cookies, body);
        foreach (var pair in answer.SetCookies.Select(c => c.Split(';')[0].Split('=', 2)))
            cookies[pair[0]] = pair[1];
        return answer;
    }
}

/// <summary>What came back.</summary>
internal sealed record Answered(int Status, string Text, IReadOnlyList<string> SetCookies);
