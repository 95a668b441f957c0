using System.Net;
using Ohmstead.App.Web;

namespace Ohmstead.App.Phones;

/// <summary>What comes over the local network: a phone with a good key or cookie, on the few addresses that are for it. All else gets a bare 403.</summary>
internal sealed class PhoneGate(PhoneBook book, Assets assets)
{
    public const string Cookie = "ohmstead-phone";

    /// <summary>Answers what is not to go further.</summary>
    /// <returns>True when the request may go on to the phone's pages.</returns>
    public async Task<bool> AdmitAsync(HttpContext context)
    {
        if (!IsOwnAddress(context) || !Guard.IsFromOwnPage(context.Request))
            return Refuse(context);
        var path = context.Request.Path;
        if (HttpMethods.IsGet(context.Request.Method) && path.StartsWithSegments("/phone/key", out var key) && key.HasValue)
            return LetIn(context, key.Value![1..]);
        if (book.Find(context.Request.Cookies[Cookie]) is not { } phone)
            return Refuse(context);
        if (await assets.TrySendAsync(context))
            return false;
        context.Items[typeof(PairedPhone)] = phone;
        return path.StartsWithSegments("/phone") || Refuse(context);
    }

    /// <summary>The phone that asks, on requests that came through this gate.</summary>
    public static PairedPhone? Of(HttpContext context) => context.Items[typeof(PairedPhone)] as PairedPhone;

    /// <summary>The Host header must be the very address that was connected to: a name that leads here is somebody's trick.</summary>
    private static bool IsOwnAddress(HttpContext context) =>
        IPAddress.TryParse(context.Request.Host.Host, out var asked)
        && context.Connection.LocalIpAddress is { } own
        && asked.MapToIPv6().Equals(own.MapToIPv6());

    private bool LetIn(HttpContext context, string key)
    {
        if (book.LetIn(key, KindOf(context.Request.Headers.UserAgent.ToString())) is not { } secret)
            return Refuse(context);
        // Lax, not Strict: the camera that read the code opens the page from outside.
        context.Response.Cookies.Append(
            Cookie,
            secret,
            new CookieOptions
            {
                HttpOnly = true,
                SameSite = SameSiteMode.Lax,
                MaxAge = PhoneBook.PhoneLife,
                Path = "/",
            }
        );
        context.Response.Redirect("/phone");
        return false;
    }

    private static bool Refuse(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return false;
    }

    /// <summary>What it is by the words that browsers agree on; no make.</summary>
    private static string KindOf(string agent) =>
        agent.Contains("Tablet", StringComparison.Ordinal) ? "a tablet"
        : agent.Contains("Mobi", StringComparison.Ordinal) ? "a phone"
        : "a browser";
}
