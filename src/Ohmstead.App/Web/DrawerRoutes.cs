using System.Text;
using Ohmstead.Workshop.Drawers;

namespace Ohmstead.App.Web;

/// <summary>What the drawer's screens ask, as question files for <c>ohmstead reckon</c>.</summary>
internal static class DrawerRoutes
{
    /// <summary>GET /drawer/stock.question.json and /drawer/batches/{batch}/batch.question.json.</summary>
    public static void Map(WebApplication app)
    {
        app.MapGet(
            "/drawer/stock.question.json",
            async (Bench bench) => File(DrawerOrders.Question(await bench.Drawer.ReadAsync(), bench.Time.GetUtcNow()), "stock")
        );
        app.MapGet(
            "/drawer/batches/{batch:guid}/batch.question.json",
            async (Guid batch, Bench bench) =>
            {
                var drawer = await bench.Drawer.ReadAsync();
                return BatchCall.Find(drawer, batch, bench.Time.GetUtcNow()) is { } call
                    ? File(BatchCall.Question(drawer, call.Bin, call.Batch, bench.Time.GetUtcNow()), "batch")
                    : Results.NotFound();
            }
        );
    }

    private static IResult File(string text, string name) =>
        Results.File(Encoding.UTF8.GetBytes(text + "\n"), "application/json", $"{name}.question.json");
}
