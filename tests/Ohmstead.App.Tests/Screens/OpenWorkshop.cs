using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Readings;
using Ohmstead.App.Web;
using Ohmstead.Storage;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Screens;

/// <summary>A workshop in a throwaway folder, kept by the real store, with the screens of it.</summary>
internal sealed class OpenWorkshop : IAsyncDisposable
{
    private readonly DirectoryInfo folder;
    private readonly Store store;

    private OpenWorkshop(DirectoryInfo folder, Store store)
    {
        (this.folder, this.store) = (folder, store);
        Bench = new Bench(store, store.Photos, TimeProvider.System, Guid.CreateVersion7);
        Screens.Services.AddSingleton(Bench);
        // Made when the first screen asks for it, and given back with the screens.
        Screens.Services.AddSingleton(_ => new UnitDiagnoses(Bench, NullLogger<UnitDiagnoses>.Instance));
        Screens.JSInterop.Mode = JSRuntimeMode.Loose;
    }

    public Bench Bench { get; }

    public BunitContext Screens { get; } = new();

    public static async Task<OpenWorkshop> OpenAsync()
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-test-");
        return new(folder, await Store.OpenAsync(folder.FullName, TimeProvider.System, CancellationToken.None));
    }

    public Task<Ohmstead.Workshop.Stores.DocumentSaved> PutAsync(string kind, string id, string text) =>
        Bench.Store.SaveDocumentAsync(kind, id, 0, text, DateTimeOffset.UnixEpoch, CancellationToken.None);

    public async Task<string> TextAsync(string kind, string id) =>
        (await Bench.Store.ReadDocumentAsync(kind, id, CancellationToken.None))?.Text ?? "";

    public async ValueTask DisposeAsync()
    {
        await Screens.DisposeAsync();
        await store.DisposeAsync();
        Remove(folder.FullName);
    }

    /// <summary>Removes a throwaway folder, though what a closed screen was still reading may open a file in it meanwhile.</summary>
    public static void Remove(string folder)
    {
        for (var left = 20; ; left--)
            try
            {
                Directory.Delete(folder, recursive: true);
                return;
            }
            catch (IOException) when (left > 0)
            {
                Thread.Yield();
            }
    }
}
