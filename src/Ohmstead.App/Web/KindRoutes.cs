using System.Text;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Dating;

namespace Ohmstead.App.Web;

/// <summary>Type sheets as files.</summary>
internal static class KindRoutes
{
    /// <summary>GET /kinds/{id}/sheet.json: the sheet as it was last saved; /kinds/{id}/type.json: with what it was made of; /kinds/{id}/dating.json: what dates its units.</summary>
    public static void Map(WebApplication app)
    {
        app.MapGet(
            "/kinds/{id}/sheet.json",
            async (string id, Bench bench, CancellationToken cancel) =>
                await bench.Store.ReadDocumentAsync(Bench.SheetKind, id, cancel) is { } document
                    ? Results.File(Encoding.UTF8.GetBytes(document.Text), "application/json", $"{FileName(id)}.sheet.json")
                    : Results.NotFound()
        );
        app.MapGet(
            "/kinds/{id}/type.json",
            async (string id, Bench bench, CancellationToken cancel) =>
                await bench.Store.ReadDocumentAsync(Bench.SheetKind, id, cancel) is { } sheet
                && await bench.Store.ReadDocumentAsync(OwnType.DocumentKind, id, cancel) is { } document
                && OwnType.Read(document.Text) is { Made: not null } type
                    ? await TypeAsync(bench, id, sheet.Text, type)
                    : Results.NotFound()
        );
        app.MapGet(
            "/kinds/{id}/dating.json",
            async (string id, Bench bench, CancellationToken cancel) =>
                await bench.Store.ReadDocumentAsync(KindDates.DocumentKind, id, cancel) is { } document
                    ? Results.File(
                        // What this version cannot read goes out as it is kept.
                        Encoding.UTF8.GetBytes(
                            KindDates.Read(document.Text) is { } dates ? KindDates.Write(dates with { Type = id }) : document.Text
                        ),
                        "application/json",
                        $"{FileName(id)}.dating.json"
                    )
                    : Results.NotFound()
        );
    }

    private static async Task<IResult> TypeAsync(Bench bench, string id, string sheet, OwnType type)
    {
        var read = await TypeDates.ReadAsync(bench, id);
        if (read.Problem.Length > 0)
            return Results.Text(read.Problem, "text/plain", Encoding.UTF8, StatusCodes.Status409Conflict);
        var text = TypeFile.Write(sheet, type, await TypeUnits.SoundAsync(bench, id), read.Dates);
        return Results.File(Encoding.UTF8.GetBytes(text), "application/json", $"{FileName(id)}.type.json");
    }

    private static string FileName(string id) => string.Concat(id.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '_'));
}
