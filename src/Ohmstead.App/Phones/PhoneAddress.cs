using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http.Features;

namespace Ohmstead.App.Phones;

/// <summary>The door that phones come to.</summary>
internal sealed class PhoneAddress(IServer server)
{
    /// <summary>The address that a phone opens, ending in a slash.</summary>
    public Uri At(string host) => new UriBuilder(Uri.UriSchemeHttp, host, Port).Uri;

    private int Port =>
        new Uri(
            server
                .Features.GetRequiredFeature<IServerAddressesFeature>()
                .Addresses.First()
                .Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal)
        ).Port;
}
