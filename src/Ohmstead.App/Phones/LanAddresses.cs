using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Ohmstead.App.Phones;

/// <summary>Where a phone on the local network finds this machine.</summary>
internal static class LanAddresses
{
    /// <summary>Addresses of the networks that are up, those with a way out first.</summary>
    public static IReadOnlyList<IPAddress> All() =>
        [
            .. NetworkInterface
                .GetAllNetworkInterfaces()
                .Where(n => n.OperationalStatus == OperationalStatus.Up && n.NetworkInterfaceType != NetworkInterfaceType.Loopback)
                .Select(n => n.GetIPProperties())
                .OrderByDescending(n => n.GatewayAddresses.Count > 0)
                .SelectMany(n => n.UnicastAddresses)
                .Select(a => a.Address)
                .Where(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a)),
        ];
}
