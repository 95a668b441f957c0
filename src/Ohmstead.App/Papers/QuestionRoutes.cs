using System.Text;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Job;

namespace Ohmstead.App.Papers;

/// <summary>What a screen asked, as a question file: the command line repeats it.</summary>
internal static class QuestionRoutes
{
    /// <summary>GET /units/{id}/can-run.question.json: what was kept last.</summary>
    public static void Map(WebApplication app) =>
        app.MapGet(
            "/units/{id:guid}/can-run.question.json",
            async (Guid id, Bench bench) =>
                await bench.ReadAsync(id) is { } unit && (await PaperFiles.MatterAsync(bench, unit)).Layout is { } layout
                    ? Results.File(Encoding.UTF8.GetBytes(LayoutQuestion.Write(layout)), "application/json", "can-run.question.json")
                    : Results.NotFound()
        );
}
