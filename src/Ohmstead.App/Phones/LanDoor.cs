using System.Net;
using System.Net.Security;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http.Features;

namespace Ohmstead.App.Phones;

/// <summary>The one door that devices come to: encrypted, with this machine's own certificate.</summary>
internal sealed class LanDoor
{
    private const string File = "certificate.pfx";
    private readonly Lock turn = new();
    private readonly NetworkFolder folder;
    private readonly TimeProvider time;
    private readonly Func<IReadOnlyList<IPAddress>> addresses;

    /// <param name="addresses">This machine's on its networks, asked anew each time.</param>
    public LanDoor(NetworkFolder folder, TimeProvider time, Func<IReadOnlyList<IPAddress>> addresses)
    {
        (this.folder, this.time, this.addresses) = (folder, time, addresses);
        Certificate = Look(folder.Read(File) is { } bytes ? LanCertificate.Read(bytes) : null);
    }

    /// <summary>The certificate that connections are opened with now.</summary>
    public LanCertificate Certificate { get; private set; }

    /// <summary>True when the certificate is another one than a device that was let in earlier knows.</summary>
    public bool IsChanged { get; private set; }

    /// <summary>This machine's addresses; the certificate is made anew where it does not serve them any more.</summary>
    public IReadOnlyList<IPAddress> Addresses()
    {
        lock (turn)
            Certificate = Look(Certificate);
        return addresses();
    }

    /// <summary>How a connection is opened.</summary>
    public ValueTask<SslServerAuthenticationOptions> Open() =>
        ValueTask.FromResult(
            new SslServerAuthenticationOptions
            {
                ServerCertificateContext = Certificate.Context,
                // One kind of socket only, which the gate knows.
                ApplicationProtocols = [SslApplicationProtocol.Http11],
            }
        );

    /// <summary>The address that a device opens, ending in a slash.</summary>
    public static Uri At(IServer server, string host) => new UriBuilder(Uri.UriSchemeHttps, host, PortOf(server)).Uri;

    private static int PortOf(IServer server) =>
        server
            .Features.GetRequiredFeature<IServerAddressesFeature>()
            .Addresses.Where(a => a.StartsWith(Uri.UriSchemeHttps, StringComparison.Ordinal))
            .Select(a => new Uri(a.Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal)).Port)
            .FirstOrDefault(443);

    private LanCertificate Look(LanCertificate? kept)
    {
        var (now, here) = (time.GetUtcNow(), addresses());
        if (kept is not null && kept.Serves(here, now))
            return kept;
        var made = LanCertificate.Make(here, kept, now);
        folder.Write(File, made.Write());
        IsChanged |= kept is not null;
        return made;
    }
}
