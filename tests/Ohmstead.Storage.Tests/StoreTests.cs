namespace Ohmstead.Storage.Tests;

/// <summary>The contract, kept by the store in a folder.</summary>
public sealed class StoreTests : StoreContract, IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    internal override async Task<OpenStore> BeginAsync()
    {
        var store = await Store.OpenAsync(folder.Path, TimeProvider.System, TestContext.Current.CancellationToken);
        return new OpenStore(store, store.Photos, Again, store.DisposeAsync);

        async Task<OpenStore> Again()
        {
            await store.DisposeAsync();
            return await BeginAsync();
        }
    }
}
