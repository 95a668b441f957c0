using System.CommandLine;
using System.Globalization;
using System.Net.Sockets;
using Ohmstead.App.Demo;
using Ohmstead.App.Hosting;
using Ohmstead.App.Web;
using Ohmstead.Storage;

namespace Ohmstead.App.Commands;

/// <summary>No verb, or <c>demo</c>: starts the tool and prints its address.</summary>
internal static class ServeCommand
{
    private static readonly Option<int> Port = new("--port")
    {
        Description = "Port on this machine.",
        HelpName = "NUMBER",
        DefaultValueFactory = _ => SiteOptions.UsualPort,
    };

    private static readonly Option<bool> Lan = new("--lan")
    {
        Description = "Let phones and tablets on the local network in, each by a code.",
    };

    private static readonly Option<string?> Folder = DataFolder.Option();

    private static readonly Option<string?> Database = DatabaseOption.Make();

    /// <summary>Makes the root start the tool.</summary>
    public static void PutInto(RootCommand root)
    {
        foreach (Option option in (Option[])[Port, Lan, Folder, Database])
            root.Options.Add(option);
        root.SetAction((parsed, cancel) => RunAsync(parsed, DatabaseOption.Place(parsed, Folder, Database), isDemo: false, cancel));
    }

    /// <summary><c>demo</c>: an invented workshop in a folder that is thrown away.</summary>
    public static Command MakeDemo()
    {
        var verb = new Verb(
            "demo",
            "Try Ohmstead on an invented workshop. It is thrown away at the end.",
            concernsMains: false,
            "ohmstead demo",
            "ohmstead demo --port 18601"
        )
        {
            Port,
            Lan,
        };
        verb.SetAction(
            async (parsed, cancel) =>
            {
                var folder = Directory.CreateTempSubdirectory("ohmstead-demo-");
                try
                {
                    return await RunAsync(parsed, new WorkshopPlace(folder.FullName, null), isDemo: true, cancel);
                }
                finally
                {
                    folder.Delete(recursive: true);
                }
            }
        );
        return verb;
    }

    private static async Task<int> RunAsync(ParseResult parsed, WorkshopPlace place, bool isDemo, CancellationToken cancel)
    {
        if (parsed.GetValue(Port) is < 0 or > 65535)
            throw new RefusedInput("--port: must be 0 to 65535. 0 takes any free one.");
        var options = new SiteOptions(parsed.GetValue(Port), parsed.GetValue(Lan), isDemo) { Folder = isDemo ? null : place.Folder };
        await using var store = await place.OpenAsync(TimeProvider.System, Guid.NewGuid(), cancel);
        await using var app = Site.Build(options, store, store.Photos, TimeProvider.System);
        var filling = isDemo
            ? Task.Run(() => DemoWorkshop.FillAsync(app.Services.GetRequiredService<Bench>(), cancel), cancel)
            : Task.CompletedTask;
        try
        {
            await app.StartAsync(cancel);
        }
        catch (IOException taken) when (taken.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException or SocketException)
        {
            throw new RefusedInput(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Port {options.Port}{(options.IsOnLan ? $" or {options.LanPort}" : "")} is in use. Ohmstead may be running already. Use another one: --port {(options.Port < 65530 ? options.Port + 2 : options.Port - 2)}"
                )
            );
        }
        finally
        {
            await filling;
        }
        Console.WriteLine($"Ohmstead is at {SiteAddress.Of(app)}");
        if (options.IsOnLan)
            Console.WriteLine("To let a tablet or a phone in, open Devices there.");
        Console.WriteLine(
            isDemo
                ? "This workshop is invented and is thrown away at the end. Ctrl-C ends."
                : $"Your workshop is saved in {place}. Ctrl-C ends."
        );
        await app.WaitForShutdownAsync(cancel);
        return ExitCode.Done;
    }
}
