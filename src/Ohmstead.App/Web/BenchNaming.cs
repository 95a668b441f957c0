using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Web;

/// <summary>The names of the benches, as the store keeps them.</summary>
internal static class BenchNaming
{
    /// <summary>All names.</summary>
    public static async Task<BenchNames> ReadAsync(IStore store) =>
        BenchNames.Of((await store.DocumentsAsync(BenchNames.DocumentKind, CancellationToken.None)).Select(d => (d.Id, d.Text)));

    /// <summary>Names this bench, whoever named it last.</summary>
    public static Task SaveAsync(Bench bench, string name) => SaveAsync(bench, bench.Store.Bench, name);

    /// <summary>Names a bench by its mark.</summary>
    public static async Task SaveAsync(Bench bench, string mark, string name)
    {
        var kept = await bench.Store.ReadDocumentAsync(BenchNames.DocumentKind, mark, CancellationToken.None);
        await bench.SaveDocumentAsync(BenchNames.DocumentKind, mark, kept?.Version ?? 0, BenchNames.Write(name));
    }
}
