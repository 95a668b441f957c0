using System.Globalization;
using Microsoft.AspNetCore.Http.Features;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Web;

/// <summary>Photos in, as they come from a camera, and out.</summary>
internal static class PhotoRoutes
{
    /// <summary>The largest photo that is taken [bytes].</summary>
    public const long MostBytes = 40_000_000;

    private const int MostWords = 200;

    /// <summary>
    /// POST /units/{id}/photos?entry=ID&amp;about=…&amp;title=… and POST /drawer/bins/{bin}/photos?entry=ID with the file as its body; GET /photos/{hash} and
    /// /photos/{hash}/small.
    /// </summary>
    public static void Map(WebApplication app)
    {
        app.MapPost(
            "/units/{id:guid}/photos",
            (Guid id, Guid entry, string? about, string? title, HttpContext context, Bench bench) =>
                TakeAsync(context, bench, id, "bench", new NewPhoto(entry, about ?? "", title ?? ""))
        );
        app.MapPost(
            "/drawer/bins/{bin:guid}/photos",
            (Guid bin, Guid entry, HttpContext context, Bench bench) => TakeForBinAsync(context, bench, bin, entry)
        );
        app.MapGet("/photos/{hash}", (string hash, HttpContext context, Bench bench) => SendAsync(context, hash, bench.Photos.OpenAsync));
        app.MapGet(
            "/photos/{hash}/small",
            (string hash, HttpContext context, Bench bench) => SendAsync(context, hash, bench.Photos.OpenThumbnailAsync)
        );
    }

    /// <summary>Keeps the photo in the body and enters it into the unit's journal.</summary>
    /// <param name="by">Who sends it, as the journal names it.</param>
    public static async Task<IResult> TakeAsync(HttpContext context, Bench bench, Guid id, string by, NewPhoto photo)
    {
        if (photo.About.Length > MostWords || photo.Title.Length > MostWords)
            return Refuse("The words with this photo are too long.", StatusCodes.Status400BadRequest);
        if (await bench.ReadAsync(id) is not { } unit)
            return Refuse("This unit is not in the workshop.", StatusCodes.Status404NotFound);
        var (hash, refused) = await KeepAsync(context, bench);
        if (refused is not null)
            return refused;
        var fact = new PhotoAdded(hash, photo.Title, photo.About);
        await bench.EnterAsync(id, unit.LastNumber, [new NewEntry(photo.EntryId, bench.Time.GetUtcNow(), by, fact)]);
        return Results.Text(hash);
    }

    /// <summary>Keeps the photo in the body and puts it on a bin of the drawer.</summary>
    private static async Task<IResult> TakeForBinAsync(HttpContext context, Bench bench, Guid bin, Guid entry)
    {
        if ((await bench.Drawer.ReadAsync()).Find(bin) is null)
            return Refuse("This bin is not in the drawer.", StatusCodes.Status404NotFound);
        var (hash, refused) = await KeepAsync(context, bench);
        if (refused is not null)
            return refused;
        await bench.Drawer.EnterAsync(entry, [new BinSaid(bin) { Photo = hash }]);
        return Results.Text(hash);
    }

    private static async Task<(string Hash, IResult? Refused)> KeepAsync(HttpContext context, Bench bench)
    {
        if (context.Request.ContentLength > MostBytes)
            return ("", Refuse(TooLarge, StatusCodes.Status413PayloadTooLarge));
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = MostBytes + 1;
        try
        {
            var kept = await bench.Photos.KeepAsync(context.Request.Body, MostBytes, bench.Time.GetUtcNow(), context.RequestAborted);
            return (kept.Hash, kept.Refused.Length > 0 ? Refuse($"Not saved: {kept.Refused}.", StatusCodes.Status400BadRequest) : null);
        }
        catch (BadHttpRequestException large) when (large.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return ("", Refuse(TooLarge, StatusCodes.Status413PayloadTooLarge));
        }
    }

    private static string TooLarge =>
        string.Create(CultureInfo.InvariantCulture, $"This file is larger than {MostBytes / 1e6:0} MB. A smaller picture will do.");

    /// <summary>Sends a photo that is there.</summary>
    public static async Task<IResult> SendAsync(HttpContext context, string hash, Func<string, CancellationToken, Task<PhotoFile?>> open)
    {
        if (!PhotoHash.IsOne(hash))
            return Refuse("No photo has this address.", StatusCodes.Status400BadRequest);
        if (await open(hash, context.RequestAborted) is not { } photo)
            return Results.NotFound();
        // Named by its content: it never changes.
        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return Results.Stream(photo.Content, photo.MediaType);
    }

    private static IResult Refuse(string why, int status) => Results.Text(why, statusCode: status);
}

/// <summary>What comes with a photo.</summary>
/// <param name="EntryId">Made where the photo is taken: sent twice, it is one entry.</param>
/// <param name="About">Element, reading or look-over item it belongs to; empty for the unit.</param>
internal sealed record NewPhoto(Guid EntryId, string About, string Title);
