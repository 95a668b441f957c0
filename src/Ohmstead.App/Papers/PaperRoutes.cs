using Ohmstead.App.Web;

namespace Ohmstead.App.Papers;

/// <summary>Papers as files.</summary>
internal static class PaperRoutes
{
    /// <summary>GET /units/{id}/papers/{paper}.pdf; with ?round the bench sheet holds the usual round alone.</summary>
    public static void Map(WebApplication app) =>
        app.MapGet(
            "/units/{id:guid}/papers/{paper}.pdf",
            async (Guid id, string paper, HttpContext context, Bench bench) =>
            {
                var pdf = await PaperFiles.MakeAsync(bench, id, paper, context.Request.Query.ContainsKey("round"));
                // Shown in the browser, not saved: it is printed from there.
                return pdf is null ? Results.NotFound() : Results.Bytes(pdf, "application/pdf");
            }
        );
}
