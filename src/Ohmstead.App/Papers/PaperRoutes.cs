using System.Text;
using Ohmstead.App.Web;

namespace Ohmstead.App.Papers;

/// <summary>Papers as files.</summary>
internal static class PaperRoutes
{
    /// <summary>
    /// GET /units/{id}/papers/{paper}.pdf; with ?round the bench sheet holds the usual round alone, with ?second the owner's page is in the
    /// shop's second language. GET /shop/language/{id}.txt: a words file.
    /// </summary>
    public static void Map(WebApplication app)
    {
        app.MapGet(
            "/units/{id:guid}/papers/{paper}.pdf",
            async (Guid id, string paper, HttpContext context, Bench bench) =>
            {
                var asked = context.Request.Query;
                var pdf = await PaperFiles.MakeAsync(bench, id, paper, asked.ContainsKey("round"), asked.ContainsKey("second"));
                // Shown in the browser, not saved: it is printed from there.
                return pdf is null ? Results.NotFound() : Results.Bytes(pdf, "application/pdf");
            }
        );
        app.MapGet(
            "/shop/language/{id}.txt",
            async (string id, Bench bench) =>
                await PageLanguages.TextAsync(bench, id) is { } text
                    ? Results.File(Encoding.UTF8.GetBytes(text), "text/plain; charset=utf-8", id + PageLanguages.Ending)
                    : Results.NotFound()
        );
    }
}
