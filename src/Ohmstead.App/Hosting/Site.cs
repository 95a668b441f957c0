using System.Net;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Https;
using Ohmstead.App.Background;
using Ohmstead.App.Demo;
using Ohmstead.App.Papers;
using Ohmstead.App.Phones;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Hosting;

/// <summary>The web application, put together.</summary>
internal static class Site
{
    /// <summary>Threads that are there at once; beyond them the pool adds one or two a second.</summary>
    private const int LeastThreads = 16;

    /// <summary>No request but a photo is longer [bytes].</summary>
    private const long MostBytes = 4 << 20;

    /// <param name="alter">Changes the host before it is built: a test's own way in.</param>
    public static WebApplication Build(
        SiteOptions options,
        IStore store,
        IPhotos photos,
        TimeProvider time,
        Action<IWebHostBuilder>? alter = null
    )
    {
        // What is worked out in the background takes every thread of a small pool; an entry must find one at once.
        ThreadPool.SetMinThreads(LeastThreads, LeastThreads);
        var builder = WebApplication.CreateSlimBuilder(
            new WebApplicationOptions
            {
                ApplicationName = typeof(Site).Assembly.GetName().Name,
                ContentRootPath = AppContext.BaseDirectory,
                EnvironmentName = Environments.Production,
            }
        );
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostBytes;
            kestrel.Listen(IPAddress.Loopback, options.Port);
            if (options.IsOnLan)
                kestrel.Listen(IPAddress.Any, options.LanPort, listen => OpenToDevices(listen));
        });
        alter?.Invoke(builder.WebHost);
        AddServices(builder.Services, options, new Bench(store, photos, time, () => Guid.CreateVersion7(time.GetUtcNow())));
        var app = builder.Build();
        var assets = app.Services.GetRequiredService<Assets>();
        var devices = options.IsOnLan ? app.Services.GetRequiredService<DeviceGate>() : null;
        Refusals.CatchWhatBreaks(app);
        app.Use((context, next) => AdmitAsync(context, next, assets, devices));
        Refusals.SayWhy(app);
        app.UseRouting();
        app.UseAntiforgery();
        PaperRoutes.Map(app);
        QuestionRoutes.Map(app);
        KindRoutes.Map(app);
        DrawerRoutes.Map(app);
        PhotoRoutes.Map(app);
        HumRoutes.Map(app);
        KeptRoutes.Map(app);
        if (options.IsOnLan)
        {
            PhoneRoutes.Map(app);
            DeviceRoutes.Map(app);
        }
        Refusals.MapRest(app);
        app.MapRazorComponents<Frame>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    private static void AddServices(IServiceCollection services, SiteOptions options, Bench bench)
    {
        // A type sheet is edited as one text.
        services.AddRazorComponents().AddInteractiveServerComponents().AddHubOptions(hub => hub.MaximumReceiveMessageSize = MostBytes);
        // Keys live as long as the process: nothing that they protect has to outlive it, and none lies on the disk.
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        // Cookies know no port: an invented workshop beside this one has a name of its own for its.
        services.AddAntiforgery(o => o.Cookie.Name = options.IsDemo ? "ohmstead-demo" : "ohmstead-bench");
        // It would write a key into the user's home at every start all the same.
        services.Remove(services.Single(s => s.ImplementationType?.Name == "DataProtectionHostedService"));
        services.AddSingleton(options);
        services.AddSingleton(bench);
        services.AddSingleton(bench.Time);
        services.AddSingleton<Assets>();
        services.AddSingleton<UnitDiagnoses>();
        services.AddSingleton<ShopMinutes>();
        services.AddSingleton<MergeWork>();
        // One for each page.
        services.AddScoped<PageConnection>().AddScoped<CircuitHandler>(s => s.GetRequiredService<PageConnection>());
        AddDevices(services, options, bench);
        services.AddSingleton(_ => new DemoOpener(bench.Time, (other, store) => Build(other, store, store.Photos, bench.Time)));
    }

    private static void AddDevices(IServiceCollection services, SiteOptions options, Bench bench)
    {
        services.AddSingleton(new NetworkFolder(options.Folder));
        services.AddSingleton(new PairingCodes(bench.Time));
        services.AddSingleton(s => new DeviceBook(
            s.GetRequiredService<NetworkFolder>(),
            bench.Time,
            bench.NewId,
            s.GetRequiredService<ILogger<DeviceBook>>()
        ));
        services.AddSingleton(new DeviceProofs(bench.Time));
        services.AddSingleton(new LiveConnections(bench.Time));
        services.AddSingleton(s => new LanDoor(s.GetRequiredService<NetworkFolder>(), bench.Time, LanAddresses.All));
        services.AddSingleton<PairingDesk>();
        services.AddSingleton<DeviceGate>();
    }

    private static void OpenToDevices(ListenOptions listen)
    {
        var door = listen.ApplicationServices.GetRequiredService<LanDoor>();
        var keeper = new DoorKeeper();
        listen.Protocols = HttpProtocols.Http1;
        // Before the handshake, which costs this machine more than a stranger.
        listen.Use(next => connection => keeper.AdmitAsync(connection, next));
        listen.UseHttps(new TlsHandshakeCallbackOptions { OnConnection = _ => door.Open() });
    }

    /// <param name="devices">Who lets devices in; null when the tool listens to this machine only.</param>
    private static async Task AdmitAsync(HttpContext context, RequestDelegate next, Assets assets, DeviceGate? devices)
    {
        Guard.PutHeaders(context);
        // The encrypted door is for devices, wherever a connection to it comes from.
        if (devices is not null && (context.Request.IsHttps || !Guard.IsLocal(context.Connection)))
        {
            await devices.AdmitAsync(context, next);
            return;
        }
        if (!Guard.IsLocal(context.Connection) || !Guard.IsOwnName(context.Request.Host) || !Guard.IsFromOwnPage(context.Request))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return;
        }
        if (!await assets.TrySendAsync(context))
            await next(context);
    }
}
