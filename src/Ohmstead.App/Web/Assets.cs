using System.Collections.Immutable;
using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Net.Http.Headers;
using Ohmstead.Workshop.Drawing;

namespace Ohmstead.App.Web;

/// <summary>
/// Scripts, styles and fonts, carried inside the program. All style sheets are sent as one, in the order of their names, and
/// so are all scripts; addresses hold a hash of the content, so a browser may keep them for good.
/// </summary>
internal sealed class Assets
{
    private const string Prefix = "wwwroot/";
    private readonly ImmutableDictionary<string, Asset> byPath;

    public Assets()
    {
        var assembly = Assembly.GetExecutingAssembly();
        var files = assembly
            .GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .ToImmutableDictionary(n => n[Prefix.Length..], n => Read(assembly, n), StringComparer.Ordinal);
        var all = ImmutableDictionary.CreateBuilder<string, Asset>(StringComparer.Ordinal);
        foreach (var (name, bytes) in files)
            if (MediaType(name) is { } type && (!IsJoined(name) || IsAlone(name)))
                all["/" + name] = new Asset(bytes, type);
        all["/ohmstead.css"] = new Asset(
            // How drawings look is said once, where they are written.
            [.. Joined(files, ".css"), .. Encoding.UTF8.GetBytes(SvgText.Style)],
            "text/css; charset=utf-8"
        );
        all["/ohmstead.js"] = new Asset(Joined(files, ".js"), "text/javascript; charset=utf-8");
        byPath = all.ToImmutable();
    }

    /// <summary>Scripts with an address of their own: what is not ours, and what stands in for the tool while it does not answer.</summary>
    private static bool IsAlone(string name) => name is "blazor.web.js" or "offline.js";

    /// <summary>The address of a file, with its hash.</summary>
    public string Url(string path) => $"{path}?v={byPath[path].Tag}";

    /// <summary>Answers the request when it is for one of the files.</summary>
    public async Task<bool> TrySendAsync(HttpContext context)
    {
        if (!byPath.TryGetValue(context.Request.Path.Value ?? "", out var asset))
            return false;
        if (!HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method))
            return false;
        var (request, response) = (context.Request, context.Response);
        response.Headers.ETag = $"\"{asset.Tag}\"";
        response.Headers.CacheControl = request.Query["v"] == asset.Tag ? "public, max-age=31536000, immutable" : "no-cache";
        if (request.Headers.IfNoneMatch.ToString().Contains(asset.Tag, StringComparison.Ordinal))
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return true;
        }
        response.Headers.Vary = HeaderNames.AcceptEncoding;
        response.ContentType = asset.MediaType;
        var body = asset.For(request.Headers.AcceptEncoding.ToString(), out var encoding);
        if (encoding.Length > 0)
            response.Headers.ContentEncoding = encoding;
        response.ContentLength = body.Length;
        if (!HttpMethods.IsHead(request.Method))
            await response.Body.WriteAsync(body, context.RequestAborted);
        return true;
    }

    private static bool IsJoined(string name) =>
        name.EndsWith(".css", StringComparison.Ordinal) || name.EndsWith(".js", StringComparison.Ordinal);

    private static byte[] Joined(ImmutableDictionary<string, byte[]> files, string ending)
    {
        var joined = new MemoryStream();
        var chosen = files
            .Where(f => f.Key.EndsWith(ending, StringComparison.Ordinal) && !IsAlone(f.Key))
            .OrderBy(f => f.Key, StringComparer.Ordinal);
        foreach (var (_, bytes) in chosen)
        {
            joined.Write(bytes);
            joined.WriteByte((byte)'\n');
        }
        return joined.ToArray();
    }

    private static byte[] Read(Assembly assembly, string name)
    {
        using var stream = assembly.GetManifestResourceStream(name)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static string? MediaType(string name) =>
        Path.GetExtension(name) switch
        {
            ".css" => "text/css; charset=utf-8",
            ".js" => "text/javascript; charset=utf-8",
            ".woff2" => "font/woff2",
            ".svg" => "image/svg+xml",
            ".txt" => "text/plain; charset=utf-8",
            _ => null,
        };

    private sealed class Asset(byte[] plain, string mediaType)
    {
        private readonly Lazy<byte[]> gzip = new(() => Packed(plain, s => new GZipStream(s, CompressionLevel.Optimal)));
        private readonly Lazy<byte[]> brotli = new(() => Packed(plain, s => new BrotliStream(s, CompressionLevel.Optimal)));

        public string MediaType { get; } = mediaType;

        public string Tag { get; } = Convert.ToHexStringLower(SHA256.HashData(plain))[..16];

        /// <summary>The body in the best encoding that the browser takes; fonts are packed already.</summary>
        public byte[] For(string accepted, out string encoding)
        {
            encoding = "";
            if (MediaType.StartsWith("font/", StringComparison.Ordinal))
                return plain;
            encoding =
                accepted.Contains("br", StringComparison.Ordinal) ? "br"
                : accepted.Contains("gzip", StringComparison.Ordinal) ? "gzip"
                : "";
            return encoding switch
            {
                "br" => brotli.Value,
                "gzip" => gzip.Value,
                _ => plain,
            };
        }

        private static byte[] Packed(byte[] plain, Func<Stream, Stream> packing)
        {
            var packed = new MemoryStream();
            using (var stream = packing(packed))
                stream.Write(plain);
            return packed.ToArray();
        }
    }
}
