using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Hosting;
using Ohmstead.App.Phones;
using Ohmstead.App.Web;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Web;

/// <summary>The tool, served: over a real port of this machine, or as if asked over a local network.</summary>
internal sealed class RunningSite : IAsyncDisposable
{
    private readonly DirectoryInfo folder;
    private readonly Store store;
    private readonly WebApplication app;

    private RunningSite(DirectoryInfo folder, Store store, WebApplication app) =>
        (this.folder, this.store, this.app) = (folder, store, app);

    public const string OwnAddress = "192.168.7.2";
    public const int OwnPort = 18601;

    public Bench Bench => Get<Bench>();

    public Uri Address => SiteAddress.Of(app);

    public Guid UnitId { get; private set; }

    public HttpClient Client { get; private set; } = null!;

    /// <param name="time">The clock of the tool.</param>
    public static Task<RunningSite> OnPortAsync(TimeProvider? time = null) => StartAsync(isOnLan: false, time ?? TimeProvider.System, null);

    /// <param name="around">Puts something between the pages and the store.</param>
    public static Task<RunningSite> OnLanAsync(TimeProvider? time = null, Func<IStore, IStore>? around = null) =>
        StartAsync(isOnLan: true, time ?? TimeProvider.System, host => host.UseTestServer(), around);

    /// <summary>Both doors on real ports: the plain one of this machine and the encrypted one for devices.</summary>
    public static Task<RunningSite> OnPortsAsync(TimeProvider? time = null) => StartAsync(isOnLan: true, time ?? TimeProvider.System, null);

    /// <summary>The encrypted door for devices; what comes there is a device's, from this machine too.</summary>
    public Uri DeviceAddress => LanDoor.At(Get<IServer>(), "127.0.0.1");

    public string Folder => folder.FullName;

    private static async Task<RunningSite> StartAsync(
        bool isOnLan,
        TimeProvider time,
        Action<IWebHostBuilder>? alter,
        Func<IStore, IStore>? around = null
    )
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-site-");
        var store = await Store.OpenAsync(folder.FullName, TimeProvider.System);
        var site = new RunningSite(
            folder,
            store,
            Site.Build(
                new SiteOptions(0, isOnLan, IsDemo: false) { Folder = folder.FullName },
                around?.Invoke(store) ?? store,
                store.Photos,
                time,
                alter
            )
        );
        await site.app.StartAsync();
        if (alter is null)
            site.Client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = site.Address };
        await store.SaveDocumentAsync(
            Bench.SheetKind,
            "twin-175",
            0,
            await File.ReadAllTextAsync(Tool.Demo("twin-175.sheet.json")),
            DateTimeOffset.UnixEpoch,
            CancellationToken.None
        );
        site.UnitId = await site.TakeInAsync("F-7");
        return site;
    }

    public T Get<T>()
        where T : notnull => app.Services.GetRequiredService<T>();

    public async Task<Guid> TakeInAsync(string tag)
    {
        var id = Bench.NewId();
        await Bench.EnterAsync(id, 0, "bench", new TakenIn(tag, "twin-175", "an owner", "it hums"));
        return id;
    }

    /// <summary>A request from another machine of the network.</summary>
    public Task<HttpContext> FromPhoneAsync(string method, string path, string? cookie = null, Action<HttpContext>? more = null) =>
        app.GetTestServer()
            .SendAsync(context =>
            {
                (context.Connection.RemoteIpAddress, context.Connection.LocalIpAddress) = (
                    IPAddress.Parse("192.168.7.9"),
                    IPAddress.Parse(OwnAddress)
                );
                (context.Request.Method, context.Request.Scheme) = (method, "https");
                context.Request.Host = new HostString(OwnAddress, OwnPort);
                var question = path.IndexOf('?', StringComparison.Ordinal);
                context.Request.Path = question < 0 ? path : path[..question];
                if (question >= 0)
                    context.Request.QueryString = new QueryString(path[question..]);
                if (method != "GET")
                    context.Request.Headers.Origin = $"https://{context.Request.Host}";
                if (cookie is not null)
                    context.Request.Headers.Cookie = cookie;
                more?.Invoke(context);
            });

    public async ValueTask DisposeAsync()
    {
        Client?.Dispose();
        await app.DisposeAsync();
        await store.DisposeAsync();
        folder.Delete(recursive: true);
    }
}
