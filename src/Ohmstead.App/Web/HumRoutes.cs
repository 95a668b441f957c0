using System.Globalization;
using Microsoft.AspNetCore.Http.Features;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Listening;

namespace Ohmstead.App.Web;

/// <summary>Recordings of the hum in: what the page made of one as WAV, and the file as the phone made it.</summary>
internal static class HumRoutes
{
    /// <summary>The largest recording that is taken [bytes]: an hour from a phone.</summary>
    public const long MostBytes = 40_000_000;

    /// <summary>
    /// POST /units/{id}/recordings/wav with a WAV: listened to, kept, its hash is the answer. POST /units/{id}/recordings?entry=ID&amp;as=idle&amp;wav=HASH
    /// with the file as it came: kept and entered; without wav the file is a WAV itself.
    /// </summary>
    public static void Map(WebApplication app)
    {
        app.MapPost(
            "/units/{id:guid}/recordings/wav",
            async (Guid id, HttpContext context, Bench bench) =>
            {
                var (kept, refused) = await KeepAsync(context, bench, id);
                if (refused is not null)
                    return refused;
                var heard = await ListenAsync(bench, kept);
                return heard.Recording is null ? Refuse(heard) : Results.Text(kept);
            }
        );
        app.MapPost(
            "/units/{id:guid}/recordings",
            async (Guid id, Guid entry, string? @as, string? wav, HttpContext context, Bench bench) =>
            {
                if (StateOf(@as) is not { } state)
                    return Refuse("Say whether it ran with no load, with a load, or with the rollers lifted.");
                if (wav is not null && !PhotoHash.IsOne(wav))
                    return Refuse("No recording has this address.");
                var (kept, refused) = await KeepAsync(context, bench, id);
                if (refused is not null)
                    return refused;
                var heard = await ListenAsync(bench, wav ?? kept);
                if (heard.Recording is not { } recording)
                    return Refuse(heard);
                var unit = (await bench.ReadAsync(id))!;
                var fact = new HumRecorded(state, kept, wav ?? kept, recording.Verdict);
                await bench.EnterAsync(id, unit.LastNumber, [new NewEntry(entry, bench.Time.GetUtcNow(), "bench", fact)]);
                return Results.Text(kept);
            }
        );
    }

    /// <summary>Listens to a kept WAV; what is not there is none.</summary>
    public static async Task<HumHeard> ListenAsync(Bench bench, string hash)
    {
        if (await bench.Photos.OpenAsync(hash, CancellationToken.None) is not { } file)
            return new(null, "not here", "choose the recording again");
        await using var first = file.Content;
        var bytes = new byte[first.Length];
        await first.ReadExactlyAsync(bytes);
        return await bench.Work.RunAsync("A recording", () => HumRecording.Listen(() => new MemoryStream(bytes)));
    }

    private static async Task<(string Hash, IResult? Refused)> KeepAsync(HttpContext context, Bench bench, Guid id)
    {
        if (context.Request.ContentLength > MostBytes)
            return ("", TooLarge);
        if (await bench.ReadAsync(id) is null)
            return ("", Refuse("This unit is not in the workshop.", StatusCodes.Status404NotFound));
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = MostBytes + 1;
        try
        {
            var kept = await bench.Photos.KeepRecordingAsync(
                context.Request.Body,
                MostBytes,
                bench.Time.GetUtcNow(),
                context.RequestAborted
            );
            return kept.Refused.Length > 0 ? ("", Refuse($"Not saved: {kept.Refused}.")) : (kept.Hash, null);
        }
        catch (BadHttpRequestException large) when (large.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return ("", TooLarge);
        }
    }

    private static HumState? StateOf(string? word) =>
        word switch
        {
            "idle" => HumState.Idle,
            "loaded" => HumState.Loaded,
            "lifted" => HumState.Lifted,
            _ => null,
        };

    private static IResult TooLarge =>
        Refuse(
            string.Create(CultureInfo.InvariantCulture, $"This file is larger than {MostBytes / 1e6:0} MB. Ten seconds will do."),
            StatusCodes.Status413PayloadTooLarge
        );

    private static IResult Refuse(HumHeard heard) => Refuse($"Not saved: {heard.Word}. {Workshop.Words.Sentences.Large(heard.Right)}.");

    private static IResult Refuse(string why, int status = StatusCodes.Status400BadRequest) => Results.Text(why, statusCode: status);
}
