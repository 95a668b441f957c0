using System.Reflection;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Demo;

/// <summary>The invented workshop of <c>ohmstead demo</c>.</summary>
internal static class DemoWorkshop
{
    /// <summary>Fills an empty store.</summary>
    public static async Task FillAsync(Bench bench, CancellationToken cancel)
    {
        foreach (var id in (string[])["twin-175", "solo-110", "step-230"])
            await bench.Store.SaveDocumentAsync(
                Bench.SheetKind,
                id,
                0,
                Carried($"{id}.sheet.json"),
                bench.Time.GetUtcNow(),
                cancel
            );
        await TakeInAsync(
            bench,
            new TakenIn(
                "F-041",
                "twin-175",
                "M. Alder",
                "The trains slow down as soon as cars hang behind, and the whistle is weak."
            )
        );
        await TakeInAsync(bench, new TakenIn("F-038", "solo-110", "P. Rowan", "Dead. It hummed last winter."));
        await TakeInAsync(
            bench,
            new TakenIn("F-044", "step-230", "Fernlea club", "From an attic; not plugged in for thirty years.")
        );
    }

    private static Task TakeInAsync(Bench bench, TakenIn unit) => bench.EnterAsync(bench.NewId(), 0, "bench", unit);

    private static string Carried(string name)
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program lacks {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
