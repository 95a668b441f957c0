using System.Net;
using Microsoft.Extensions.Primitives;
using Ohmstead.App.Web;

namespace Ohmstead.App.Phones;

/// <summary>
/// What comes over the local network. Without a good code or the cookie of a device that is let in: a bare 403. With the cookie alone: the
/// page on which the device proves its key. With the proof: the whole bench, or one unit's pages; and a live connection only with a ticket
/// of its own, signed for just before.
/// </summary>
internal sealed class DeviceGate
{
    public const string Cookie = "__Host-ohmstead-device";
    public const string Pass = "__Host-ohmstead-pass";
    private const string Connection = "/_blazor";
    private readonly DeviceBook book;
    private readonly DeviceProofs proofs;
    private readonly LiveConnections live;
    private readonly PairingDesk desk;
    private readonly Assets assets;

    public DeviceGate(DeviceBook book, DeviceProofs proofs, LiveConnections live, PairingDesk desk, Assets assets)
    {
        (this.book, this.proofs, this.live, this.desk, this.assets) = (book, proofs, live, desk, assets);
        book.ShutOut += id =>
        {
            proofs.Forget(id);
            live.End(id);
        };
    }

    /// <summary>The device that asks, on requests that came through this gate.</summary>
    public static Device? Of(HttpContext context) => context.Items[typeof(Device)] as Device;

    /// <summary>Answers what is not to go further, and lets the rest go on as what the device may do.</summary>
    public async Task AdmitAsync(HttpContext context, RequestDelegate next)
    {
        // Encrypted or not at all: no address of this machine on the network answers otherwise.
        if (!context.Request.IsHttps || !IsOwnAddress(context) || !Guard.IsFromOwnPage(context.Request))
            Refuse(context);
        else if (context.Request.Path.StartsWithSegments(PairingDesk.Path, out var code))
            await desk.AnswerAsync(context, code);
        else if (book.Find(context.Request.Cookies[Cookie]) is not { } device)
            Refuse(context);
        else if (context.Request.Path.StartsWithSegments(PairingDesk.ProofPath))
            await desk.ProveAsync(context, device);
        else if (!await assets.TrySendAsync(context))
            await ProvedAsync(context, device, next);
    }

    private async Task ProvedAsync(HttpContext context, Device device, RequestDelegate next)
    {
        var (path, address) = (context.Request.Path, PairingDesk.AddressOf(context));
        var isSocket = path.Equals(Connection) && !StringValues.IsNullOrEmpty(context.Request.Headers.Upgrade);
        var isProved = isSocket
            ? proofs.UseTicket(context.Request.Query["access_token"], device.Id, address)
            : proofs.IsPass(context.Request.Cookies[Pass], device.Id, address);
        if (!isProved)
        {
            await desk.AskForProofAsync(context, device);
            return;
        }
        book.Saw(device.Id);
        context.Items[typeof(Device)] = device;
        Asker.Begin(new Asker(device.Mark, device.Name, () => book.Find(device.Id) is { MayWork: true }));
        if (!device.IsBench)
        {
            if (path.StartsWithSegments("/phone"))
                await next(context);
            else
                Refuse(context);
            return;
        }
        // What the connection of the screens would fall back to is no single connection that could be signed for, or ended.
        if (
            path.StartsWithSegments(Connection)
            && !isSocket
            && !path.Equals($"{Connection}/initializers")
            && !path.Equals($"{Connection}/disconnect")
        )
        {
            Refuse(context);
            return;
        }
        if (isSocket)
            await live.RunAsync(device, context.Abort, () => OpenAsync(context, device, next));
        else
            await next(context);
    }

    /// <summary>Opens a connection that can be ended by now. Shut out before that, its device has no more.</summary>
    private Task OpenAsync(HttpContext context, Device device, RequestDelegate next)
    {
        if (book.Find(device.Id) is not null)
            return next(context);
        Refuse(context);
        return Task.CompletedTask;
    }

    /// <summary>The Host header must be the very address that was connected to: a name that leads here is somebody's trick.</summary>
    private static bool IsOwnAddress(HttpContext context) =>
        IPAddress.TryParse(context.Request.Host.Host, out var asked)
        && context.Connection.LocalIpAddress is { } own
        && asked.MapToIPv6().Equals(own.MapToIPv6());

    private static void Refuse(HttpContext context) => context.Response.StatusCode = StatusCodes.Status403Forbidden;
}
