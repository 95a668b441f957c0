using System.Net;
using Microsoft.Extensions.Primitives;

namespace Ohmstead.App.Web;

/// <summary>
/// Who may ask: pages of this program in a browser on this machine, and nobody else. A page of another site that a browser on
/// this machine has open must neither read nor write here (names that lead to 127.0.0.1, forms, sockets).
/// </summary>
internal static class Guard
{
    private const string Policy =
        "default-src 'self'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' blob: data:; "
        + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>Puts the headers that keep a browser from running or embedding what is not ours.</summary>
    public static void PutHeaders(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        // With "no-referrer" a browser names no origin on a form of our own either, and the form would be refused below.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.CacheControl = "no-cache, no-store";
    }

    /// <summary>True for a connection from this machine to this machine.</summary>
    public static bool IsLocal(ConnectionInfo connection) =>
        connection.RemoteIpAddress is { } remote
        && IPAddress.IsLoopback(remote)
        && connection.LocalIpAddress is { } local
        && IPAddress.IsLoopback(local);

    /// <summary>True when the Host header names this machine by its loopback address.</summary>
    public static bool IsOwnName(HostString host) =>
        host.Host is "127.0.0.1" or "[::1]" || string.Equals(host.Host, "localhost", StringComparison.OrdinalIgnoreCase);

    /// <summary>
    /// True when a request that may change something comes from a page of this very address. Browsers put an Origin header on
    /// every POST and every socket; what has none is no browser page, and changes nothing here. Where a browser says besides
    /// from which site a request came (Sec-Fetch-Site), that must agree.
    /// </summary>
    public static bool IsFromOwnPage(HttpRequest request)
    {
        var mayChange = !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);
        var isSocket = request.HttpContext.WebSockets.IsWebSocketRequest || !StringValues.IsNullOrEmpty(request.Headers.Upgrade);
        if (!mayChange && !isSocket)
            return true;
        if (request.Headers["Sec-Fetch-Site"] is { Count: > 0 } site && site != "same-origin")
            return false;
        return string.Equals(request.Headers.Origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase);
    }
}
