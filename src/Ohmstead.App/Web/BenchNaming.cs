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
    public static async Task SaveAsync(Bench bench, string name)
    {
        var kept = await bench.Store.ReadDocumentAsync(BenchNames.DocumentKind, bench.Store.Bench, CancellationToken.None);
        await bench.SaveDocumentAsync(BenchNames.DocumentKind, bench.Store.Bench, kept?.Version ?? 0, BenchNames.Write(name));
    }
}
