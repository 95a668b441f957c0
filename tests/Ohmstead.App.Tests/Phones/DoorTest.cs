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

/// <summary>The encrypted door on a real port, with a real handshake, and a tablet in front of it.</summary>
public abstract class DoorTest : IAsyncLifetime
{
    private protected static DeviceRights Work { get; } = new(null, MayWork: true, TimeSpan.FromDays(7));
    private protected RunningSite Site { get; private set; } = null!;
    private HttpClient client = null!;
    private protected Handheld Tablet { get; private set; } = null!;

    protected static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    protected string Host => Site.DeviceAddress.Authority;

    private protected LanDoor Door => Site.Get<LanDoor>();

    public async ValueTask InitializeAsync()
    {
        Site = await RunningSite.OnPortsAsync();
        client = new HttpClient(
            new SocketsHttpHandler
            {
                AllowAutoRedirect = false,
                UseCookies = false,
                SslOptions = { RemoteCertificateValidationCallback = (_, shown, _, _) => IsOurs(shown) },
            }
        )
        {
            BaseAddress = Site.DeviceAddress,
        };
        Tablet = new Handheld(Host, SendAsync);
    }

    public async ValueTask DisposeAsync()
    {
        Tablet.Dispose();
        client.Dispose();
        await Site.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    private protected async Task PairAsync(DeviceRights rights) =>
        Assert.Equal((200, "/"), Two(await Tablet.PairAsync(Site.Get<PairingCodes>().New(rights).Text)));

    private protected static (int, string) Two(Answered answer) => (answer.Status, answer.Text);

    protected string Port => Site.DeviceAddress.Port.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private protected static void AssertBare(Answered answer, int status) => Assert.Equal((status, ""), Two(answer));

    protected bool IsOurs(X509Certificate? shown) =>
        shown is not null
        && string.Equals(
            shown.GetCertHashString(HashAlgorithmName.SHA256),
            Door.Certificate.Print.Replace(":", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );

    private protected Task<Answered> SendAsync(string method, string path, string cookies, string? body) =>
        SendAsync(method, path, cookies, body, ("", ""));

    private protected async Task<Answered> SendAsync(
        string method,
        string path,
        string cookies,
        string? body,
        (string Name, string Value) other
    )
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
}
