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
                    ? Results.File(
                        Encoding.UTF8.GetBytes(
                            TypeFile.Write(sheet.Text, type, await TypeUnits.SoundAsync(bench, id), await DatesAsync(bench, id, cancel))
                        ),
                        "application/json",
                        $"{FileName(id)}.type.json"
                    )
                    : Results.NotFound()
        );
        app.MapGet(
            "/kinds/{id}/dating.json",
            async (string id, Bench bench, CancellationToken cancel) =>
                await DatesAsync(bench, id, cancel) is { } dates
                    ? Results.File(
                        Encoding.UTF8.GetBytes(KindDates.Write(dates with { Type = id })),
                        "application/json",
                        $"{FileName(id)}.dating.json"
                    )
                    : Results.NotFound()
        );
    }

    private static async Task<KindDates?> DatesAsync(Bench bench, string id, CancellationToken cancel) =>
        await bench.Store.ReadDocumentAsync(KindDates.DocumentKind, id, cancel) is { } document ? KindDates.Read(document.Text) : null;

    private static string FileName(string id) => string.Concat(id.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '_'));
}
