using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Ohmstead.App.Web;
using Ohmstead.Storage;

namespace Ohmstead.App.Phones;

/// <summary>Where a device is paired by its code, and where it proves its key afterwards. Nothing of the workshop is shown here.</summary>
internal sealed class PairingDesk(PairingCodes codes, DeviceBook book, DeviceProofs proofs, LanDoor door, Assets assets, Bench bench)
{
    /// <summary>Where a code leads; the code is the next segment.</summary>
    public const string Path = "/pair";

    /// <summary>Where a device proves its key.</summary>
    public const string ProofPath = "/proof";

    /// <summary>So many letters of the print go with a code that is read by a camera.</summary>
    public const int PrintLetters = 32;

    /// <summary>An answer of a device is no longer [bytes].</summary>
    private const long MostBytes = 4096;

    /// <summary>Where a request comes from, as tries and proofs are counted.</summary>
    public static string AddressOf(HttpContext context) => context.Connection.RemoteIpAddress?.MapToIPv6().ToString() ?? "";

    /// <summary>The beginning of a print, without colons, as it stands behind a code.</summary>
    public static string Short(string print) => print.Replace(":", "", StringComparison.Ordinal)[..PrintLetters];

    /// <summary>GET /pair/CODE: the page; GET /pair/CODE/FILE: what it is drawn with; POST /pair/CODE: the device's key, proved.</summary>
    public async Task AnswerAsync(HttpContext context, PathString rest)
    {
        var parts = (rest.Value ?? "").Split('/', 3);
        var (code, file) = (parts.Length > 1 ? parts[1] : "", parts.Length > 2 ? parts[2] : "");
        if (codes.Find(code, AddressOf(context)) is not { } rights)
            Refuse(context);
        else if (file.Length > 0)
            await SendFileAsync(context, file);
        else if (HttpMethods.IsGet(context.Request.Method))
            await new RazorComponentResult<PairPage>(
                new
                {
                    Code = code,
                    IsPhone = rights.UnitId is not null,
                    rights.MayWork,
                }
            ).ExecuteAsync(context);
        else if (HttpMethods.IsPost(context.Request.Method) && await ReadAsync<NewDevice>(context) is { } asked)
            await LetInAsync(context, code, asked);
        else
            Refuse(context);
    }

    /// <summary>
    /// POST /proof/challenge: a challenge; POST /proof: its signature. A 409 means that another challenge may be signed; a 403 comes only
    /// from the gate, which lets the device in no more.
    /// </summary>
    public async Task ProveAsync(HttpContext context, Device device)
    {
        if (!HttpMethods.IsPost(context.Request.Method))
            context.Response.StatusCode = StatusCodes.Status405MethodNotAllowed;
        else if (context.Request.Path.Equals($"{ProofPath}/challenge"))
            await context.Response.WriteAsync(proofs.Challenge(device.Id));
        else if (!context.Request.Path.Equals(ProofPath))
            context.Response.StatusCode = StatusCodes.Status404NotFound;
        else if (await ReadAsync<UsedAnswer>(context) is not { } said)
            context.Response.StatusCode = StatusCodes.Status400BadRequest;
        else if (
            proofs.Prove(device, said.Use, context.Request.Host.Value ?? "", new(said.Challenge, said.Signature), AddressOf(context)) is
            { } secret
        )
            await GiveAsync(context, device, said.Use, secret);
        else
            context.Response.StatusCode = StatusCodes.Status409Conflict;
    }

    /// <summary>The page on which a device with a cookie alone proves its key, for the address bar; a bare 401 for all else.</summary>
    public async Task AskForProofAsync(HttpContext context, Device device)
    {
        context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        if (
            HttpMethods.IsGet(context.Request.Method)
            && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal)
        )
            await new RazorComponentResult<ProvePage>(new { device.Name }) { StatusCode = StatusCodes.Status401Unauthorized }.ExecuteAsync(
                context
            );
    }

    private async Task LetInAsync(HttpContext context, string code, NewDevice asked)
    {
        var address = AddressOf(context);
        var isOther =
            asked.Print.Length > 0 && !string.Equals(asked.Print, Short(door.Certificate.Print), StringComparison.OrdinalIgnoreCase);
        if (isOther || !DeviceKey.IsSigned(asked.Key, asked.Signature, $"ohmstead\npair\n{context.Request.Host.Value}\n{code}"))
        {
            codes.Fail(address);
            context.Response.StatusCode = StatusCodes.Status400BadRequest;
            await context.Response.WriteAsync(
                isOther
                    ? "The code belongs to another certificate than this page has. Do not go on. Ask for a new code at the bench."
                    : "This browser could not prove its key. Ask for a new code at the bench."
            );
            return;
        }
        // The code stays good: it is no try at one.
        if (Asker.IsHere(asked.Name))
        {
            context.Response.StatusCode = StatusCodes.Status400BadRequest;
            await context.Response.WriteAsync("The machine at the bench itself is called that. Give this device another name.");
            return;
        }
        if (codes.Use(code, address) is not { } rights)
        {
            Refuse(context);
            return;
        }
        var (device, cookie) = book.LetIn(rights, asked.Name, asked.Key);
        await NameAsync(device);
        Append(context, DeviceGate.Cookie, cookie, rights.Life);
        Append(context, DeviceGate.Pass, proofs.Pass(device.Id, address), DeviceProofs.PassLife);
        await context.Response.WriteAsync(device.IsBench ? "/" : "/phone");
    }

    /// <summary>Its entries carry its mark: the name that goes with that. Without a store that answers it is called by the mark.</summary>
    private async Task NameAsync(Device device)
    {
        try
        {
            await BenchNaming.SaveAsync(bench, device.Mark, device.Name);
        }
        catch (Exception away) when (away is StoreUnusable or IOException)
        {
            return;
        }
    }

    private static Task GiveAsync(HttpContext context, Device device, string use, string secret)
    {
        if (use == DeviceProofs.Live)
            return context.Response.WriteAsync(secret);
        Append(context, DeviceGate.Pass, secret, DeviceProofs.PassLife);
        return context.Response.WriteAsync(device.IsBench ? "/" : "/phone");
    }

    /// <summary>Scripts and styles of the page, for a device that has nothing but the code yet.</summary>
    private async Task SendFileAsync(HttpContext context, string file)
    {
        context.Request.Path = $"/{file}";
        if (!await assets.TrySendAsync(context))
            Refuse(context);
    }

    private static void Append(HttpContext context, string name, string value, TimeSpan life) =>
        context.Response.Cookies.Append(
            name,
            value,
            new CookieOptions
            {
                HttpOnly = true,
                Secure = true,
                SameSite = SameSiteMode.Strict,
                MaxAge = life,
                Path = "/",
            }
        );

    private static async Task<T?> ReadAsync<T>(HttpContext context)
        where T : class
    {
        if (context.Request.ContentLength is null or > MostBytes)
            return null;
        try
        {
            return await JsonSerializer.DeserializeAsync<T>(context.Request.Body, Options, context.RequestAborted);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    private static void Refuse(HttpContext context) => context.Response.StatusCode = StatusCodes.Status403Forbidden;

    /// <summary>What a device sends that wants to be let in.</summary>
    /// <param name="Print">What stood behind the code that its camera read; empty where it was typed.</param>
    private sealed record NewDevice(string Name, string Key, string Signature, string Print);

    private sealed record UsedAnswer(string Use, string Challenge, string Signature);
}
