using Ohmstead.App.Web;
using Ohmstead.Storage;

namespace Ohmstead.App.Demo;

/// <summary>
/// Opens the invented workshop beside the real one: at a port of its own, in a folder that is thrown away with it. Opened once,
/// when it is first asked for.
/// </summary>
/// <param name="build">Puts a site together on a store.</param>
internal sealed class DemoOpener(TimeProvider time, Func<SiteOptions, Store, WebApplication> build) : IAsyncDisposable
{
    private readonly SemaphoreSlim turn = new(1);
    private DirectoryInfo? folder;
    private Store? store;
    private WebApplication? app;
    private Uri? address;

    /// <summary>Where it is.</summary>
    /// <param name="home">The way back.</param>
    /// <exception cref="NotAllowed">A device asks: it would find nothing at that address.</exception>
    public async Task<Uri> OpenAsync(Uri home)
    {
        Asker.MustBeHere();
        await turn.WaitAsync();
        try
        {
            return address ??= await BeginAsync(home);
        }
        finally
        {
            turn.Release();
        }
    }

    private async Task<Uri> BeginAsync(Uri home)
    {
        await CloseAsync();
        folder = Directory.CreateTempSubdirectory("ohmstead-demo-");
        store = await Store.OpenAsync(folder.FullName, time, CancellationToken.None);
        app = build(new SiteOptions(0, IsOnLan: false, IsDemo: true) { Home = home }, store);
        await DemoWorkshop.FillAsync(app.Services.GetRequiredService<Bench>(), CancellationToken.None);
        await app.StartAsync();
        return SiteAddress.Of(app);
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => CloseAsync();

    private async ValueTask CloseAsync()
    {
        if (app is not null)
            await app.DisposeAsync();
        if (store is not null)
            await store.DisposeAsync();
        folder?.Delete(recursive: true);
        (app, store, folder) = (null, null, null);
    }
}
