namespace Ohmstead.Storage.Tests.Databases;

/// <summary>The contract, kept by the store in a database that is shared.</summary>
[Collection(PostgresServer.Alone)]
public sealed class SharedStoreTests(PostgresServer server) : StoreContract, IDisposable
{
    private readonly TempFolder folder = new();
    private int opened;

    public void Dispose() => folder.Dispose();

    internal override async Task<OpenStore> BeginAsync() => await OpenAsync(await server.DatabaseAsync("contract"));

    private async Task<OpenStore> OpenAsync(string address)
    {
        // Another folder each time: what comes back comes from the database.
        var store = await Store.OpenSharedAsync(
            address,
            folder.Of(Draft.Name(++opened)),
            new Guid(opened, 0, 0, new byte[8]),
            TestContext.Current.CancellationToken
        );
        return new OpenStore(store, store.Photos, Again, store.DisposeAsync);

        async Task<OpenStore> Again()
        {
            await store.DisposeAsync();
            return await OpenAsync(address);
        }
    }
}
